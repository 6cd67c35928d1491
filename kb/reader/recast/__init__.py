"""Other ways to read a text that is not understood as it stands, tried in turn by `kb.reader.otherwise`."""
