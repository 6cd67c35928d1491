"""Proposals and decisions as JSON."""

from __future__ import annotations

from collections.abc import Iterable
from pathlib import Path
from typing import Any

import msgspec

from kb.sources.suggested import Decision
from kb.suggesting.proposing import Proposal, Suggestions
from kb.suggesting.wordnet import WordNet


def encode_suggestions(found: Suggestions, decisions: Iterable[Decision], thesaurus: WordNet) -> bytes:
    """`thesaurus`, `proposals`, `left_out` (each with `reason` and the `items` it would be mixed up with) and
    `decided`, what was decided before."""
    return _encoded(
        {
            "thesaurus": {"name": thesaurus.name, "version": thesaurus.version},
            "proposals": [_proposal(proposal) for proposal in found.proposals],
            "left_out": [
                {**_proposal(left.proposal), "reason": left.reason, "items": list(left.items)}
                for left in found.left_out
            ],
            "decided": [_decision(decision) for decision in decisions],
        }
    )


def encode_decisions(new: Iterable[Decision], file: Path) -> bytes:
    """`kept`, what was just decided, and the `file` it stands in."""
    return _encoded({"file": str(file), "kept": [_decision(decision) for decision in new]})


def _encoded(value: Any) -> bytes:
    return msgspec.json.format(msgspec.json.encode(value), indent=2) + b"\n"


def _proposal(found: Proposal) -> dict[str, Any]:
    return {
        "item": found.item,
        "word": found.word,
        "name": found.name,
        "relation": found.relation,
        "origin": msgspec.structs.asdict(found.origin),
        "meaning": found.meaning,
    }


def _decision(decision: Decision) -> dict[str, Any]:
    word = decision.word
    origin = msgspec.structs.asdict(word.origin) if word.origin is not None else None
    return {
        "item": word.item,
        "word": word.word,
        "accepted": decision.accepted,
        "on": word.on.isoformat(),
        "origin": origin,
        "meaning": word.meaning,
    }
