"""The sentence of every rule of the demo, as kept in demo_rules.txt.

After a change of the demo or of the wording, write it anew with `python -m tests.wording.demo_rules`, read
the difference as a reader of regulations would, and commit it only if a person could have written it.
"""

from __future__ import annotations

from pathlib import Path

from kb.files import data_folder, write_atomically
from kb.model.lookup import Lookup
from kb.sources import load_rule_base
from kb.wording import clause_reference, say_rule

KEPT = Path(__file__).with_name("demo_rules.txt")


def demo_sentences() -> str:
    """One line for each rule: the reference of its clause, and its sentence, in the order of the books."""
    base = load_rule_base(data_folder("demo_facts")).base
    assert base is not None
    lookup = Lookup(base)
    return "".join(f"{clause_reference(lookup, r.clause)}: {say_rule(lookup, r)}\n" for r in base.rules)


if __name__ == "__main__":
    write_atomically(KEPT, demo_sentences().encode())
