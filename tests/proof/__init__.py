"""Outside proof of the reasoner: an answer-set program, published examples, and defeasible theories."""
