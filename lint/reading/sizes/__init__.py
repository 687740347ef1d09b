"""The sizes of a pattern and the lists over them, in every shape that they are printed in."""
