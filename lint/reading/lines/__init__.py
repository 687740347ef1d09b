"""A text cut into parts, rows and remarks: labels, headings, passages for some sizes."""
