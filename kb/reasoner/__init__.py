"""The meaning of rules: what applies, what beats what, and which values are left open."""

from kb.reasoner.candidates import StoredCandidates
from kb.reasoner.decide import Decision, claim_verdict
from kb.reasoner.engine import Candidates, Engine, Group, scan_candidates
from kb.reasoner.norms import Norm, covers
from kb.reasoner.problem import Problem
from kb.reasoner.space import WORN, possible_facts, simplify, truth_of
from kb.reasoner.tree import Branch, Facts, Leaf, Tree, facts_of, outcomes, rows

__all__ = [
    "WORN",
    "Branch",
    "Candidates",
    "Decision",
    "Engine",
    "Facts",
    "Group",
    "Leaf",
    "Norm",
    "Problem",
    "StoredCandidates",
    "Tree",
    "claim_verdict",
    "covers",
    "facts_of",
    "outcomes",
    "possible_facts",
    "rows",
    "scan_candidates",
    "simplify",
    "truth_of",
]
