"""Stemward plans, checks and prints the treatment of unwanted woody plants, stem by stem."""
