"""The command line and the interactive shell."""
