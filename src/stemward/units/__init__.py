"""Quantities in and out: what a person types, exact factors, and figures in the person's units."""
