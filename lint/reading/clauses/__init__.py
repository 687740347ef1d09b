"""The clauses of a row, read into steps."""
