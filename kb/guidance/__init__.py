"""Guidance of one station: drafts made from the rule books, and checks that guidance agrees with them."""
