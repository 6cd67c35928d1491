"""Sentences around the question: what they tell, who claims what, and what says nothing that matters."""
