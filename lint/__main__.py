"""`python -m lint` does what the command frogproof does."""

from lint.cli import main

main()
