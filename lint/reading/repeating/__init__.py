"""Repeats within a row, and rows, passages and pieces that are called again."""
