"""A pattern as the maker of one size reads it: its words (`words`), and its report (`view`)."""
