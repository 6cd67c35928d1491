"""An outcome as a function of facts, and the smallest tree that shows it.

A reduced ordered diagram with many-valued facts (Bryant 1986) whose leaves are outcomes; what no case reaches
is a leaf of its own, so that a tree may ignore it. The diagram shares equal parts; a tree shows them once for
each way that leads to them, so a tree is grown only as far as it is shown.
"""

from __future__ import annotations

from collections.abc import Hashable, Iterable, Mapping, Sequence
from heapq import heappop, heappush
from itertools import permutations
from typing import Generic, NamedTuple, TypeVar

from kb.model.values import Choices, ValueSet, ranges
from kb.reasoner.tree import Branch, Leaf, Tree

Outcome = TypeVar("Outcome", bound=Hashable)
Parts = tuple[tuple[int, int], ...]  # classes of a fact as a mask, and the node that they lead to

IMPOSSIBLE = 0
SEARCHED = 7  # with more facts than these a tree is grown fact by fact, not searched for
_EXHAUSTIVE = 3
_MOST_WORK = 40_000  # nodes split in search of decisive facts; after that the order of the diagram is kept


class Shape(NamedTuple):
    """A tree as numbers: for each node its fact (-1 for a leaf) with the nodes below it.

    `size` is the number of rows, and of tests in all rows together.
    """

    root: int | None
    nodes: Sequence[tuple[int, Parts]]
    size: tuple[int, int]

    def facts(self, names: Sequence[str]) -> tuple[str, ...]:
        """The facts that the tree asks for, the first asked first."""
        found: dict[str, None] = {}
        seen: set[int] = set()
        waiting = [] if self.root is None else [self.root]
        while waiting:
            node = waiting.pop()
            place, parts = self.nodes[node]
            if place >= 0 and node not in seen:
                seen.add(node)
                found[names[place]] = None
                waiting += [child for _, child in reversed(parts)]
        return tuple(found)


class Function(Generic[Outcome]):
    """Nodes are numbers: a leaf with an outcome, or a fact with one child for each set of its classes."""

    def __init__(
        self, facts: Sequence[str], classes: Sequence[Sequence[ValueSet]], uses: Sequence[int]
    ) -> None:
        self.root = IMPOSSIBLE
        self._facts = facts
        self._classes = classes
        self._uses = uses
        self._place = {fact: i for i, fact in enumerate(facts)}
        self._all = [(1 << len(pieces)) - 1 for pieces in classes]
        self._outcomes: dict[int, Outcome] = {}
        self._leaves: dict[Outcome, int] = {}
        self._cut: set[int] = set()
        self._branches: dict[tuple[int, Parts], int] = {}
        self._nodes: list[tuple[int, Parts]] = [(-1, ())]
        self._supports: list[int] = [0]
        self._ways: list[int] = [0]
        self._plain: list[int] = [IMPOSSIBLE]  # the one leaf below a node, or the node itself
        self._splits: dict[tuple[int, int], Parts] = {}
        self._work = 0

    def leaf(self, outcome: Outcome) -> int:
        if outcome not in self._leaves:
            self._leaves[outcome] = len(self._nodes)
            self._outcomes[len(self._nodes)] = outcome
            self._nodes.append((-1, ()))
            self._supports.append(0)
            self._ways.append(1)
            self._plain.append(self._leaves[outcome])
        return self._leaves[outcome]

    def cut(self, rest: Outcome) -> int:
        """A leaf below which the outcome was not followed, though it has more than one there."""
        number = len(self._nodes)
        self._outcomes[number] = rest
        self._cut.add(number)
        self._nodes.append((-1, ()))
        self._supports.append(0)
        self._ways.append(1)
        self._plain.append(number)
        return number

    @property
    def is_cut(self) -> bool:
        return bool(self._cut)

    def branch(self, place: int, masks: Mapping[int, int]) -> int:
        """The node that splits on a fact (`masks`: classes for each child); the child where all are one."""
        if len(masks) == 1:
            return next(iter(masks))
        parts = _parted(masks)
        key = (place, parts)
        if key not in self._branches:
            number = self._branches[key] = len(self._nodes)
            leaves = {self._plain[child] for child in masks} - {IMPOSSIBLE}
            self._plain.append(leaves.pop() if len(leaves) == 1 else number)
            support = 1 << place
            for child in masks:
                support |= self._supports[child]
            self._nodes.append(key)
            self._supports.append(support)
            self._ways.append(sum(self._ways[child] for child in masks))
        return self._branches[key]

    def _split(self, number: int, place: int) -> Parts:
        """What a node becomes for each class of a fact."""
        supports, known = self._supports, self._splits
        if not supports[number] >> place & 1:
            return ((self._all[place], number),)
        at, parts = self._nodes[number]
        if at == place:
            return parts
        if (number, place) not in known:
            self._work += 1
            same: dict[int, int] = {}  # the children that the fact is nothing to
            turned: list[int] = []
            cells: list[tuple[int, tuple[int, ...]]] = [(self._all[place], ())]
            for mask, child in parts:
                if not supports[child] >> place & 1:
                    same[child] = mask
                    continue
                turned.append(mask)
                split = known.get((child, place)) or self._split(child, place)
                cells = [
                    (cell & part, (*children, below))
                    for cell, children in cells
                    for part, below in split
                    if cell & part
                ]
            found: dict[int, int] = {}
            for cell, children in cells:
                masks = same.copy()
                for mask, child in zip(turned, children, strict=True):
                    masks[child] = masks.get(child, 0) | mask
                made = self.branch(at, masks)
                found[made] = found.get(made, 0) | cell
            known[number, place] = _parted(found)
        return known[number, place]

    def _places(self, number: int) -> list[int]:
        support = self._supports[number]
        return [place for place in range(support.bit_length()) if support >> place & 1]

    def tree(self, order: Sequence[str] = ()) -> Tree[Outcome] | None:
        """The reduced tree with the facts of `order` first, then by how often they are tested.

        None where no case is possible. Equal parts of it are one object.
        """
        return self._built(self._shape(order))

    def _shape(self, order: Sequence[str]) -> Shape:
        """The tree of an order as numbers, with its size: what a search compares."""
        first = {self._place[fact]: i - len(order) for i, fact in enumerate(order) if fact in self._place}
        most = max(self._uses, default=0) + 1
        ranks = [(first.get(place, most - uses), place) for place, uses in enumerate(self._uses)]
        known: dict[int, int | None] = {IMPOSSIBLE: None}
        numbers: dict[tuple[int, Parts], int] = {}
        nodes: list[tuple[int, Parts]] = []
        sizes: list[tuple[int, int]] = []

        def numbered(node: tuple[int, Parts], size: tuple[int, int]) -> int:
            if node not in numbers:
                numbers[node] = len(nodes)
                nodes.append(node)
                sizes.append(size)
            return numbers[node]

        def below(number: int) -> int | None:
            if number not in known:
                if self._supports[number]:
                    known[number] = split(number, min(self._places(number), key=ranks.__getitem__))
                else:
                    known[number] = numbered((-1, ((0, number),)), (1, 0))
            return known[number]

        def split(number: int, place: int) -> int | None:
            """Children that are one tree share a branch."""
            children: dict[int, int] = {}
            for mask, node in self._split(number, place):
                child = below(node)
                if child is not None:
                    children[child] = children.get(child, 0) | mask
            if len(children) <= 1:
                return next(iter(children), None)
            count = sum(sizes[child][0] for child in children)
            tests = count + sum(sizes[child][1] for child in children)
            return numbered((place, tuple((mask, child) for child, mask in children.items())), (count, tests))

        root = below(self.root)
        return Shape(root, nodes, (0, 0) if root is None else sizes[root])

    def _built(self, shape: Shape) -> Tree[Outcome] | None:
        """The tree of a shape."""
        made: list[Tree[Outcome]] = []
        for place, parts in shape.nodes:  # children come before their parents
            if place < 0:
                made.append(Leaf(self._outcomes[parts[0][1]]))
            else:
                children = tuple((self._union(place, mask), made[child]) for mask, child in parts)
                made.append(Branch(self._facts[place], children))
        return None if shape.root is None else made[shape.root]

    def _union(self, place: int, mask: int) -> ValueSet:
        sets = [values for piece, values in enumerate(self._classes[place]) if mask >> piece & 1]
        if isinstance(sets[0], Choices):
            return Choices(frozenset().union(*(s.members for s in sets if isinstance(s, Choices))))
        return ranges(interval for s in sets if not isinstance(s, Choices) for interval in s.intervals)

    # -- the tree that is shown -------------------------------------------------------------------------

    def smallest(self, rest: Outcome, most: int, first: Sequence[str] = ()) -> Tree[Outcome] | None:
        """The smallest tree found, of at most `most` rows; `first` stays in front.

        With up to three facts every order is tried, so it is the smallest there is. What takes more rows is
        folded: its leaf is `rest`, and has more than one outcome.
        """
        if self._supports[self.root].bit_count() > SEARCHED:
            return self._grown(rest, most, first)
        best = self._searched(first)
        if best.root is not None and best.size[0] > most:
            return self._grown(rest, most, first)
        return self._built(best)

    def _searched(self, first: Sequence[str]) -> Shape:
        """The smallest tree found by trying each fact in each place of the order, one after the other."""
        best = self._shape(first)
        facts = [fact for fact in best.facts(self._facts) if fact not in first]
        chosen = list(first)
        while len(facts) > 1:
            exhaustive = len(facts) <= _EXHAUSTIVE
            orders = list(permutations(facts)) if exhaustive else [(fact,) for fact in facts]
            tried = [(self._shape([*chosen, *order]), order) for order in orders]
            shape, order = min(tried, key=lambda entry: entry[0].size)
            if shape.size < best.size:
                best = shape
            if exhaustive:
                break
            chosen.append(order[0])
            facts.remove(order[0])
        return best

    def _grown(self, rest: Outcome, most: int, first: Sequence[str]) -> Tree[Outcome] | None:
        """A tree grown from the root, what holds most cases first, each time by its most decisive fact."""
        if self._plain[self.root] == IMPOSSIBLE:
            return None
        wanted = [self._place[fact] for fact in first if fact in self._place]
        grown: dict[int, tuple[int, list[tuple[int, int]]]] = {}  # sprout: its fact, and masks with sprouts
        nodes = [self._plain[self.root]]  # the node of each sprout
        waiting = [(-1.0, 0)]
        count = 1
        while waiting:
            weight, sprout = heappop(waiting)
            if not self._supports[nodes[sprout]]:
                continue
            place, parts = self._most_decisive(nodes[sprout], wanted)
            if count + len(parts) - 1 > most and sprout > 0:
                continue
            count += len(parts) - 1
            children = []
            for mask, child in parts:
                children.append((mask, len(nodes)))
                heappush(waiting, (weight * mask.bit_count() / len(self._classes[place]), len(nodes)))
                nodes.append(child)
            grown[sprout] = (place, children)
        return self._shown(nodes, grown, rest)

    def _most_decisive(self, number: int, wanted: Sequence[int]) -> tuple[int, Parts]:
        """The fact after which the fewest ways are left (the first wanted one before), and what follows."""
        best: tuple[tuple[int, int, int], int, dict[int, int]] | None = None
        own = self._nodes[number][0]  # to split on its own fact costs nothing
        places = sorted(self._places(number), key=lambda place: (place != own, -self._uses[place]))
        for place in [place for place in wanted if place in places][:1] or places:
            masks: dict[int, int] = {}
            for mask, child in self._split(number, place):
                if child != IMPOSSIBLE:
                    plain = self._plain[child]
                    masks[plain] = masks.get(plain, 0) | mask
            if len(masks) > 1:
                score = (sum(self._ways[child] for child in masks), -self._uses[place], place)
                if best is None or score < best[0]:
                    best = (score, place, masks)
                if self._work > _MOST_WORK:
                    break
            elif place in wanted:
                return self._most_decisive(number, [one for one in wanted if one != place])
        assert best is not None, "a node with two outcomes has a fact that tells them apart"
        _, place, masks = best
        return place, _parted(masks)

    def _shown(
        self, nodes: Sequence[int], grown: Mapping[int, tuple[int, list[tuple[int, int]]]], rest: Outcome
    ) -> Tree[Outcome]:
        """The sprouts as a tree; one that leads to nothing but folded parts is folded, save the root.

        What is settled soonest comes first, so that the exceptions of a long table go before the rest of it.
        """
        folded: Leaf[Outcome] = Leaf(rest)
        made: dict[int, Tree[Outcome]] = {}
        for sprout in range(len(nodes) - 1, -1, -1):  # children come after their parents
            if sprout in grown:
                place, children = grown[sprout]
                below = [(mask, made[child]) for mask, child in children]
                shown = _joined(below)
                shown = below if sprout == 0 and len(shown) == 1 else shown
                shown.sort(key=lambda child: (child[1] is folded, isinstance(child[1], Branch)))
                parts = tuple((self._union(place, mask), child) for mask, child in shown)
                made[sprout] = Branch(self._facts[place], parts) if len(parts) > 1 else parts[0][1]
            elif self._supports[nodes[sprout]] or nodes[sprout] in self._cut:
                made[sprout] = folded
            else:
                made[sprout] = Leaf(self._outcomes[nodes[sprout]])
        return made[0]


def _joined(children: Iterable[tuple[int, Tree[Outcome]]]) -> list[tuple[int, Tree[Outcome]]]:
    """Children that are shown alike share a branch: what no case reaches may tell them apart, or a fold."""
    found: list[tuple[int, Tree[Outcome]]] = []
    for mask, child in children:
        index = next((i for i, (_, other) in enumerate(found) if other == child), len(found))
        found[index : index + 1] = [(mask | (found[index][0] if index < len(found) else 0), child)]
    return found


def _parted(masks: Mapping[int, int]) -> Parts:
    """Children and the classes that lead to them, the first class first."""
    if len(masks) == 2:  # as most have
        (one, mask), (other, rest) = masks.items()
        return ((mask, one), (rest, other)) if mask & -mask < rest & -rest else ((rest, other), (mask, one))
    return tuple(sorted(((mask, child) for child, mask in masks.items()), key=_first_class))


def _first_class(part: tuple[int, int]) -> int:
    return part[0] & -part[0]
