"""English as data: words of structure, what a question is wrapped in, and ways of asking."""
