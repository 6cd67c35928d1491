"""The records of a rule base, their values and their conditions."""
