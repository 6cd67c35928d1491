"""The words of duty and permission in a sentence: what it says must, must not, may or need not be done."""

from __future__ import annotations

from collections.abc import Iterator

import msgspec

from kb.guidance.checking.words import fold
from kb.model.records import Modality
from kb.text import Pattern


class Modal(msgspec.Struct, frozen=True):
    """A modal expression: characters `start` to `end`. `be` says that it holds the "be" of a passive.

    `done` says that it stands for a verb too ("is prohibited"). `sure` is False where plain English leaves
    open whether a duty is meant ("is worn", "should"); `weak` says that it only advises ("should"), `only`
    that "only" follows ("may only be worn").
    """

    start: int
    end: int
    modality: Modality
    be: bool = False
    done: bool = False
    sure: bool = True
    only: bool = False
    weak: bool = False


_ALLOWED = r"(?:permitted|allowed|authori[sz]ed)"
_FINE = r"(?:fine|ok|okay|all right|acceptable)"
_BANNED = r"(?:prohibited|forbidden|banned)"
_ADVISED = r"(?:recommended|advised|encouraged|urged|expected)"
_NEEDED = r"(?:required|obliged|mandatory|compulsory|obligatory)"
_FORMS: tuple[tuple[str, Modality, str], ...] = (
    (r"(?:must|shall|may|can) (?:not|never)(?: under any circumstances)? be", "must_not", "be"),
    (r"(?:must|shall|may|can) (?:not|never)(?: under any circumstances)?", "must_not", ""),
    (r"cannot be|mustn't be|can't be|shan't be", "must_not", "be"),
    (r"cannot|mustn't|can't|shan't", "must_not", ""),
    (r"(?:should|ought) (?:not|never) (?:to )?be", "must_not", "be unsure weak"),
    (r"should (?:not|never)|ought (?:not|never) to", "must_not", "unsure weak"),
    (r"will (?:not|never) be", "must_not", "be unsure"),
    (r"will (?:not|never)", "must_not", "unsure"),
    (
        rf"(?:is|are) (?:not|never) (?:{_ALLOWED} )?to be|(?:is|are) {_BANNED} (?:to be|from being)",
        "must_not",
        "be",
    ),
    (rf"(?:is|are) (?:not|never) (?:{_ALLOWED} )?to", "must_not", ""),
    (r"need not be|needn't be|(?:does|do) not (?:have|need) to be", "need_not", "be"),
    (rf"(?:is|are) not {_NEEDED} to be", "need_not", "be"),
    (r"need not|needn't|(?:does|do) not (?:have|need) to", "need_not", ""),
    (rf"(?:is|are) not {_NEEDED} to", "need_not", ""),
    (r"(?:must|shall) (?:always )?be|(?:has|have|needs?) to be", "must", "be"),
    (rf"(?:is|are) {_ADVISED} to be|ought to be", "must", "be unsure weak"),
    (rf"(?:is|are) {_ADVISED} to", "must", "unsure weak"),
    (r"ought to", "must", "unsure weak"),
    (rf"(?:is|are) {_NEEDED} to be|(?:is|are) (?:always )?to be", "must", "be"),
    (rf"(?:is|are) {_NEEDED} to|(?:has|have) to|(?:is|are) to", "must", ""),
    (r"should be", "must", "be unsure weak"),
    (r"will be", "must", "be unsure"),
    (r"(?:must|shall)(?: always)?", "must", ""),
    (r"should", "must", "unsure weak"),
    (r"will", "must", "unsure"),
    (rf"(?:may|can) be|(?:is|are) {_ALLOWED} to be", "may", "be"),
    (rf"(?:may|can)|(?:is|are) (?:{_ALLOWED}|free) to", "may", ""),
    (rf"(?:is|are) (?:strictly )?(?:{_BANNED}|not {_ALLOWED}|not {_FINE})", "must_not", "done"),
    (rf"(?:is|are) not {_NEEDED}", "need_not", "done"),
    (rf"(?:is|are) {_NEEDED}", "must", "done"),
    (rf"(?:is|are) (?:{_ALLOWED}|optional|{_FINE})", "may", "done"),
    (r"(?:is|are) (?:not|never)", "must_not", "be unsure"),
    (r"(?:is|are)(?: always)?", "must", "be unsure"),
    (r"(?:does|do) not", "must_not", "unsure"),
    (r"need(?= be)", "need_not", "needed"),
)
_WORD = Pattern(
    "|".join(rf"(?P<m{place}>(?<![\w'-])(?:{form})(?![\w'-]))" for place, (form, _, _) in enumerate(_FORMS))
)
_QUOTED = Pattern(r'"[^"]*"')


def find_modals(text: str) -> Iterator[Modal]:
    """The modal expressions of a folded text outside quotation marks, from the left.

    "Need be" as in "no cap need be worn" denies only together with the "no" before it.
    """
    quoted = [match.span() for match in _QUOTED.finditer(text)]
    for match in _WORD.finditer(text):
        if any(low <= match.start() < high for low, high in quoted):
            continue
        _, modality, marks = _FORMS[int((match.lastgroup or "m0")[1:])]
        end = match.end() + (3 if marks == "needed" else 0)
        yield Modal(
            match.start(),
            end,
            modality,
            be="be" in marks.split() or marks == "needed",
            done=marks == "done",
            sure="unsure" not in marks,
            weak="weak" in marks,
        )


def denied(modal: Modal) -> Modal:
    """The same said of nobody or of nothing: "no cap may be worn" forbids, "no cap need be worn" frees."""
    turned: dict[Modality, Modality] = {
        "may": "must_not",
        "must": "must_not",
        "need_not": "need_not",
        "must_not": "must",
    }
    sure = modal.sure and modal.modality != "must_not"
    return msgspec.structs.replace(modal, modality=turned[modal.modality], sure=sure)


def speaks_of_duty(text: str) -> bool:
    """Whether a folded text has a word of duty or permission, so that it may state a rule."""
    return any(True for modal in find_modals(text) if modal.sure)


_IT = Pattern(r"^(?:it|they) (?=(?:must|may|need|shall|is|are|has|have)\b)")
_VERB = Pattern(r" [a-z]+(?= )")
_JOINT = Pattern(r"; (?:and |but )?|, (?:and|but) | (?:and|but) |, | or ")


def last_statement(text: str) -> Iterator[tuple[str, str, bool]]:
    """The ways to take off the last of several statements: what stands before it, it, whether it borrows.

    It may lack the subject ("... and must not be wrung"), or the modal as well ("... and dried flat"): it
    then borrows both, and no circumstances of its own can be told from those of the whole.
    """
    plain = fold(text)
    first = next((modal for modal in find_modals(plain) if modal.sure), None)
    if first is None:
        return
    for joint in reversed(list(_JOINT.finditer(plain))):
        left, right = plain[: joint.start()], _IT.sub("", plain[joint.end() :])
        modal = next((modal for modal in find_modals(right) if modal.sure), None)
        if joint.start() < first.end:
            return
        if joint[0] == " or " and (modal is not None or first.modality != "must_not"):
            continue  # "must be washed or dried" asks for one of the two
        if modal is None:
            yield left, f"{plain[: first.end]} {right}", True
            verb = _VERB.match(plain, first.end)
            if verb and not first.be:  # "must have the collar down and a clean front"
                yield left, f"{plain[: verb.end()]} {right}", True
        else:
            yield left, right if modal.start else f"{plain[: first.start]}{right}", False
