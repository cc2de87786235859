"""Stemward plans, checks and prints the treatment of unwanted woody plants, stem by stem."""

__version__ = "0.1.0"
