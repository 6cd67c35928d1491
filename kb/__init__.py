"""Clothbound's knowledge base."""
