"""Verbs that say no more than that a thing is where it is, or was put there: "sits", "sticks out", "sewn"."""

from __future__ import annotations

from kb.reader.words.forms import word_pairs, word_set
from kb.reader.words.tokens import stems

_STANDING = word_set("""
    come go hang start end sit stick stand reach lie measure begin fall pass clear run extend drop rest stop
    finish land poke project protrude jut stretch trail dangle be get keep leave show grow overlap overhang
    descend rise put wear set place position fix pin sew stitch attach mount fasten roll fold turn push pull
    have make
""")
_IRREGULAR = word_pairs("""
    came=come went=go gone=go hung=hang began=begin begun=begin sat=sit stuck=stick stood=stand lay=lie
    fell=fall fallen=fall ran=run worn=wear wore=wear sewn=sew got=get kept=keep left=leave shown=show
    grown=grow grew=grow made=make had=have has=have 've=have 's=be is=be are=be was=be were=be been=be
""")


_DOING = word_set(
    "sew pin stitch stick fix attach mount fasten fold turn roll push pull have has had get got"
)
"""What may be the question, where it was not done before: "may I sew it on", "may I have it on"."""


def stands(low: str) -> bool:
    """Whether a word is a form of such a verb."""
    return _IRREGULAR.get(low, low) in _STANDING or any(stem in _STANDING for stem in stems(low))


def stands_done(low: str) -> bool:
    """Whether a word is such a form, and not of a thing still to be done."""
    return stands(low) and low not in _DOING and not low.endswith("ing")
