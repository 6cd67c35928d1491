"""A third, invented service: its rule books alone. Its questions and dialogues stand in tests/reading."""
