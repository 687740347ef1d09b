"""The words of a row as a stream of lexemes, and what is told of them before any clause is read."""
