"""Turns of a talk: what they take from the one before, and replies to what was asked back."""
