"""Plain frozen values that every room shares."""
