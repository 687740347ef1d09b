"""The lines of a page by themselves: headings, sentences that a narrow column cut, the terms a text is written in."""
