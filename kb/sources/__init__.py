"""Rule books in YAML read into the frozen records of a rule base, with every mistake collected."""

from kb.sources.events import parse_file
from kb.sources.loading import LoadResult, load_rule_base, load_texts, load_trees
from kb.sources.tree import Tree

__all__ = ["LoadResult", "Tree", "load_rule_base", "load_texts", "load_trees", "parse_file"]
