"""From pieces to the structured question: its kind, the part of each piece, and a gate for every word."""
