"""The phone in the woods: what it takes along, its page, and what it brings back."""
