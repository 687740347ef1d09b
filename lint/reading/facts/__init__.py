"""What a pattern says besides its rows: gauge, materials, measures, cautions, how pieces are put together."""
