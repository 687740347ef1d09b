"""Printed counts, told from work, remarks and sizes that look like them."""
