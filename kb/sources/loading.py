"""A folder of rule books to one rule base, with every problem on the way."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from pathlib import Path

import msgspec

from kb.errors import Location, Problem
from kb.files import find_files, is_file
from kb.model.records import Rule, RuleBase
from kb.sources.amendments import end_amended_clauses
from kb.sources.applying import check_applying
from kb.sources.books import Books, read_books
from kb.sources.checks import check_definitions, check_duties_on_kinds, check_rule_ids
from kb.sources.clauses import read_clauses
from kb.sources.conditions import read_condition
from kb.sources.drafts import ClauseDraft, Context
from kb.sources.events import LARGEST_FILE, parse_file
from kb.sources.links import Links, check_circles, link_delegations, link_rules
from kb.sources.references import References
from kb.sources.report import Report
from kb.sources.sections import gather_sections
from kb.sources.tolerances import StatedTolerance, with_tolerances
from kb.sources.tree import Tree
from kb.sources.vocabulary import read_vocabulary
from kb.text import visible

ReadTree = Callable[[bytes, str], Tree]


class LoadResult(msgspec.Struct, frozen=True):
    """`base` is None if any problem is an error; `digests` gives the SHA-256 of each file by its name."""

    base: RuleBase | None
    problems: tuple[Problem, ...]
    digests: dict[str, str]


def load_rule_base(folder: Path, read_tree: ReadTree = parse_file) -> LoadResult:
    """Read all `*.yaml` files under a folder. Never raises for what stands in it: mistakes are problems.

    `read_tree(data, name)` may be replaced by one that keeps trees by digest; see `parse_file`.
    """
    trees, problems = read_trees(folder, read_tree)
    base, found = load_trees(trees)
    every = tuple(sorted([*problems, *found]))
    failed = any(problem.severity == "error" for problem in every)
    return LoadResult(None if failed else base, every, {tree.file: tree.digest for tree in trees})


def load_texts(texts: dict[str, str]) -> LoadResult:
    """The same for files given as texts by name."""
    trees = [parse_file(text.encode("utf-8", "surrogatepass"), name) for name, text in texts.items()]
    base, problems = load_trees(trees)
    return LoadResult(base, problems, {tree.file: tree.digest for tree in trees})


def read_trees(folder: Path, read_tree: ReadTree = parse_file) -> tuple[list[Tree], list[Problem]]:
    """The trees of all files of a folder in the order of their names, and what is wrong with the files."""
    if not folder.is_dir():
        message = "There is no such folder of rule books."
        return [], [Problem(Location(str(folder)), "no-folder", message, "Correct the path.")]
    trees: list[Tree] = []
    names, failed = find_files(folder)
    problems = [_unreadable(name or str(folder), "folder", error) for name, error in failed]
    for name in sorted(names):
        problems.extend(_name_problems(name))
        if not name.endswith(".yaml") or _is_dotted(name):
            continue
        try:
            if is_file(str(folder / name)):
                trees.append(read_tree(_read(folder / name), name))
        except OSError as error:
            problems.append(_unreadable(name, "file", error))
    if not trees and not problems:
        message = "The folder holds no .yaml file."
        problems.append(
            Problem(Location(str(folder)), "no-files", message, "Write a first file such as service.yaml.")
        )
    return trees, problems


def _is_dotted(name: str) -> bool:
    return name.rpartition("/")[2].startswith(".")


def _read(path: Path) -> bytes:
    """At most one byte more than a file may have."""
    with path.open("rb") as stream:
        return stream.read(LARGEST_FILE + 1)


def _unreadable(name: str, what: str, error: OSError) -> Problem:
    message = f"The {what} cannot be read ({error.strerror})."
    return Problem(Location(_on_one_line(name)), "unreadable-file", message, "Check its permissions.")


def _on_one_line(name: str) -> str:
    return visible(name.replace("\n", "\r").replace("\t", "\r"))


def _name_problems(name: str) -> list[Problem]:
    """A problem for a file with another ending, and for one whose name could not be shown or stored."""
    if _is_dotted(name) or not name.endswith((".yaml", ".yml")):
        return []
    at = Location(_on_one_line(name))
    if str(at) != str(Location(name)):
        message = "The name of the file has a control or invisible character, or is not UTF-8."
        return [Problem(at, "file-name", message, "Rename the file or its folder.")]
    if name.endswith(".yml"):
        message = "Only files whose names end in .yaml are read."
        return [Problem(at, "file-ignored", message, "Rename it to .yaml.", "warning")]
    return []


def load_trees(trees: Iterable[Tree]) -> tuple[RuleBase | None, tuple[Problem, ...]]:
    """Trees of all files to a rule base. While a file is unreadable the others are not judged."""
    every = list(trees)
    report = Report()
    for tree in every:
        report.problems.extend(tree.problems)
    base = None
    if every and all(tree.readable for tree in every):
        base = _build(every, report)
    problems = tuple(sorted(dict.fromkeys(report.problems)))
    return (None if report.failed else base), problems


def _build(trees: list[Tree], report: Report) -> RuleBase:
    sections = gather_sections(trees, report)
    vocabulary = read_vocabulary(sections, Location(trees[0].file), report)
    context = Context(vocabulary, report)
    exclusions = [read_condition(node, vocabulary, report) for node in sections.entries["never together"]]
    books = read_books(sections.parts, vocabulary, report)
    clauses = read_clauses(sections.parts, books, context)
    check_rule_ids(clauses, report)
    references = References(clauses)
    clauses = end_amended_clauses(clauses, references, vocabulary, report)
    delegations = link_delegations(clauses, references, report)
    drafts = {draft.rule.id: draft for clause in clauses for draft in clause.rules}
    rules = link_rules(clauses, Links(references, delegations, drafts, vocabulary, report))
    check_circles(rules, report)
    if not report.failed:
        check_applying(rules, vocabulary, report)
    definitions = tuple(definition for clause in clauses for definition in clause.definitions)
    check_definitions(definitions, vocabulary, report)
    check_duties_on_kinds(clauses, vocabulary, report)
    stated = _stated_tolerances(clauses, books)
    editions = {draft.rule.id: draft.edition for clause in clauses for draft in clause.rules}
    finished = tuple(
        with_tolerances(rule, books.editions[editions[rule.id]], stated, vocabulary)
        for rule in rules
        if editions[rule.id] in books.editions
        and (rule.valid_until is None or rule.valid_from < rule.valid_until)
    )
    return RuleBase(
        service=vocabulary.service,
        authorities=tuple(vocabulary.authorities.values()),
        facts=tuple(vocabulary.facts.values()),
        groups=tuple(vocabulary.groups.values()),
        aspects=(*vocabulary.aspects.values(), *context.acts.values()),
        items=tuple(vocabulary.items.values()),
        books=tuple(books.books.values()),
        editions=tuple(books.editions.values()),
        clauses=tuple(draft.clause for draft in clauses),
        delegations=tuple(delegations.values()),
        definitions=definitions,
        tolerances=tuple(tolerance.tolerance for tolerance in stated),
        exclusions=(*exclusions, *vocabulary.worn_only),
        rules=_without_dead_links(finished),
        accepted_words=vocabulary.accepted_words,
    )


def _stated_tolerances(clauses: list[ClauseDraft], books: Books) -> tuple[StatedTolerance, ...]:
    return tuple(
        StatedTolerance(tolerance, clause.clause, books.editions[clause.clause.edition], clause.authority)
        for clause in clauses
        if clause.clause.edition in books.editions
        for tolerance in clause.tolerances
    )


def _without_dead_links(rules: tuple[Rule, ...]) -> tuple[Rule, ...]:
    """Rules without links to rules that are never in force and therefore left out."""
    alive = {rule.id for rule in rules}
    return tuple(
        msgspec.structs.replace(
            rule,
            exception_to=tuple(name for name in rule.exception_to if name in alive),
            disables=tuple(name for name in rule.disables if name in alive),
            repairs=rule.repairs if rule.repairs in alive else None,
        )
        for rule in rules
    )
