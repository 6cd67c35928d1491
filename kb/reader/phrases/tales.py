"""Ways of telling what one is and how things stand; written as the lines of `sayings.py`."""

from __future__ import annotations

_LATELY = r"(?:(?:only |have |'ve )*(?:just|newly|recently|now|finally))"
_SOON = (
    r"(?: (?:today|tonight|tomorrow|this (?:week|morning|evening|month)|next (?:week|month)|last (?:week"
    r"|month)|(?:on )?(?:mon|tues|wednes|thurs|fri|satur|sun)day))"
)

_KIN = (
    r"(?:late |old |dear |own )*(?:nan|nana|gran|granny|grandma|grandmother|grandad|granddad|grandfather|"
    r"mum|mother|dad|father|wife|husband|partner|girlfriend|boyfriend|aunt|auntie|uncle|sister|brother|son|daughter|"
    r"friend|mate|neighbour|godmother|godfather|fianc[eé]e?)"
)

_LIMB = "hands?|fingers?|thumb|wrist|foot|feet|toes?|ankle|arm|elbow|shoulder|leg|knee|back|head|eyes?"

TALES = rf"""
# started start starting joined begun taken
^((?:[^.?!;]*[.;,] )?)(?:i|we)?(?:'ve|'m| have| am| will be|'ll be)? ?{_LATELY}? ?(?:start(?:ed|ing)?|begun
    |been taken on|joined|join|signed on){_SOON}? (?:work )?as (?=an? \w) => \1I am\s
# first
^(?:it(?:'s| is) )?(?:my )?first (?:ever )?(?:day|shift|week|night){_SOON}? as (?=an? \w) => I am\s
# hurt injured sprained strained broken bruised bandaged plaster
\b(?:i|we)(?:'ve| have|'d)? (?:just |recently |only )*(?:hurt|injured|sprained|strained|broken|bruised)
    \s(?:my|our) (?:left |right |other )?({_LIMB})(?=[.,;?!]| and\b|$) => my \1 is injured
\bmy (?:left |right )?({_LIMB})(?:'s| is|'s been| has been) (?:badly |all |still )*(?:hurt|sprained|strained
    |broken|bruised|bandaged|bandaged up|in plaster|in a bandage)(?=[.,;?!]|$) => my \1 is injured
# coming attending taking visiting joining present
(<the> [a-z]+(?: [a-z]+)?)(?:'s| is|'ll be| will be|'s going to be| are|'re) (?:also |actually
    |here )*(?:coming(?: along| over| round| in)?|attending|(?:taking|leading) (?:it|the (?:service|ceremony
    |wedding|funeral|parade))|visiting|joining us)(?: today| tonight| too| as well)*(?=[.,;?!]|$)
     => \1 is present
# sodden soaked soaking boggy waterlogged soggy sopping drenched
\bground(?:'s| is)? (?:all |very |really |absolutely |pretty |quite )*(?:sodden|soaked|soaking(?: wet)?|boggy
    |waterlogged|soggy|sopping(?: wet)?|drenched)\b => ground is wet
# keep leave
\b(?:keep|leave) (it|them|mine|this|these) on\b(?! (?:the|my|a) (?:peg|hook|shelf|seat|rack)) => wear \1
# hair
\bhair(?:'s|'s got| is| has got)?(?: (?:comes?|goes|hangs|falls|gets|grows|is|grown))?
    (?: right| all the way)? down (?:past|beyond|below)\s => hair is below\s
\bhair(?:'s| is)?(?: (?:comes?|goes|hangs|falls|gets|just))*(?: right| all the way)? (?:down )?to\s
    (?=(?:the|my|our|his|her|their) (?:collar|shoulders?)\b) => hair reaches\s
^(.*\bhair\b.*[.,;] .*?)\btie it (?:up|back)\b => \1tie my hair back
# whole entire full complete
\b(?:the|my|our|his|her|their) (?:whole|entire|full|complete)
    \s(?=[\w-]+ (?:dress|rig|order|uniform|kit)\b) => the\s
# work
\b(i|we) work (?=(?:in|on|at) the \w+ as an? ) => \1 am\s
# long
\b(?:so|as) long as\b => if
# ring rings necklace chain bracelet bangle earrings watch wristwatch pendant locket
^(?!.*\bfor (?:christmas|xmas|easter|new year|valentine|my|our)\b)((?:[^?]*[.;,] )?)
    (?:my|our|his|her|an?|the) {_KIN}(?: (?:has|have|had|just|only|once))*
    \s(?:gave|left|bought|got|sent) me
    \s(?=(?:an?|some|this|these|the|her|his) (?:[\w-]+ ){{0,3}}?
    (?:rings?|necklace|chain|bracelet|bangle|earrings|watch|wristwatch|pendant|locket)\b) => \1I have\s
# beard moustache goatee
^(.*\b(?:an?|my|his|her) (?:(?:very|quite|fairly|nice|nicely|well|just) )*?)
    (?:(?:(?:very|quite|fairly|nice|nicely|well|really) )*
    (?:short|tidy|neat|trim|trimmed)(?:,| and)? )+
    (?=(?:beard|moustache|goatee)\b(?!-)) => \1
\b((?:beard|moustache|goatee|stubble)\b(?: (?:now|though|already))?[.;,]+ (?:so )?
    (?:(?:can|may|could|must|ca|do)(?:n't)? )+(?:i|he|she|we|they) (?:still |just )?)
    (?:keep|hang on to|hold on to) (it|them)
    (?=\W*$|,? (?:if|with|when|while|under|in|on|at)\b) => \1wear \2
# put down rostered booked detailed picked
^((?:[^?]*[.;,] )?)(?:i've|i have|we've|i'm|i am|they've|they have)(?: just)?(?: been)? (?:put (?:me )?down
    |put|rostered|booked|detailed|picked|down)(?: (?:today|tonight|tomorrow))? (?:for|on|to do)
    \s(?=\w+ing\b) => \1I am\s
^((?:[^?]*[.;,] )?)(?:i've|i have|we've|i'm|i am)(?: just)? (?:been )?(?:put (?:me )?down|put|rostered|booked
    |detailed|picked|down) (?:for|on) an? (?:job|task|duty|shift|turn)
    (?: (?:today|tonight|tomorrow|this \w+))?
    ,? (?:where|for which|that means|in which) (?:i|we) (?=(?:have|need|must|'ve)\b) => \1I\s
# brigade corps service company regiment outfit force unit firm organisation
\s(?:in|of) (?:this|our) (?:brigade|corps|service|company|regiment|outfit|force|unit|firm|organi[sz]ation)
    (?=\W*$|[.?!,;]) =>
# nothing's
\bnothing(?:'s| is) (?=\w+ing\b) => nothing\s
"""
