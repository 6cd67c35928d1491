"""The names of the rule books, indexed, and what a misspelt word may be of them."""
