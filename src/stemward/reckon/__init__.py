"""Arithmetic of the trade: pure functions, metric, numpy in and out, no tables and no defaults hidden."""
