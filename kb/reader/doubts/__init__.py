"""What is asked back, what is said of words that nothing explains, and a last look that no name is lost."""
