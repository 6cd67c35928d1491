"""Ways of asking what differs between two sides that come to "what's the difference between A and B for C?".

Lines as in `sayings.py`.
"""

from __future__ import annotations

_ASKS = r"(?:what(?:'s| is|s| are)|whats|any|is there (?:a|any)) (?:the |a )?differences?"
_AS_TO = (
    r"(?:as to|as regards|as far as|with regards? to|with respect to|in terms of|when it comes to|regarding"
    r"|concerning|where|about|on|for|in|of)"
)
_VERSUS = r"(?:against|versus|vs\.?|v\.?|compared (?:to|with)|as opposed to|next to|beside|and|or)"
_PLAIN = r"(?:ordinary|normal|usual|regular|standard|typical|everyday|plain)"

DIFFERENCES = rf"""
# difference differences differ differs different
^(.*\bdiffer(?:s|ent|ences?)?\b.*?),? (?:when it comes|as far as it comes|with regards?|with respect
    |in regard) to\b
     => \1 for
^(.*\bdifferences? .*\bbetween (?:an?|the) ){_PLAIN} => \1
^(.*\bdifferences? .*\band (?:an?|the) ){_PLAIN} => \1
^([\w' -]+?) {_VERSUS} ([\w' -]+?)\s?[:,;.?–-]+ {_ASKS}(?: {_AS_TO} ([\w' -]+?))?\W*$
     => what's the difference between \1 and \2 for \3?
^((?:[^.?!;]*[.,;:] )?){_ASKS} between (an? [\w -]+?)'s ([\w -]+?) and (?:mine|ours|my own|the one i wear
    |my one)\?
    \s(?:i'm|i am|we're|we are) (an? [\w -]+?)\W*$ => \1what's the difference between \2's \3 and \4's?
^(?:i'm|i am) (an? [\w -]+?)[.,;:!]+ {_ASKS} between (an? [\w -]+?)'s ([\w -]+?) and (?:mine|my own
    |my one)\W*$
     => what's the difference between \2's \3 and \1's?
\b(differences? .*\bbetween .*? and (?:the |an? )?)([\w -]+?)s' (?:ones?|own)\W*$ => \1\2s?
^(.*\bdifferences? .*\bbetween an? )([\w -]+?)s ([\w -]+?) and (an?) ([\w-]+?)s\W*$ => \1\2's \3 and \4 \5's?
^(.*\bdifferences? .*\bbetween )(?:the |an? |my |our )?(summer|winter) ([\w-]+) and (?:the |an? |my |our )?
    (winter|summer) (?:\3|one)\W*$ => \1the \3 in \2 and in \4?
"""
