"""Words that lead a circumstance, that keep one from being left out, and by which people are called."""

from __future__ import annotations

from kb.model.months import MONTHS
from kb.reader.words.forms import word_row, word_set
from kb.reader.words.street import RELATIVES

CLAUSE_LEADS = tuple(
    tuple(words.split("_"))
    for words in word_row("""
    just_because even_though even_when even_if now_that given_that seeing_that seeing_as ever_since once while
    whilst when whenever as because cos since after before until till although though if
    """)
)
"""What leads a clause with a subject of its own, the longest first."""
PHRASE_LEADS = tuple(
    tuple(words.split("_"))
    for words in word_row("""
    because_of due_to thanks_to owing_to in_front_of for_fear_of in_spite_of in_honour_of for_the_sake_of
    at near during behind despite after before until till amid following
    """)
)
"""What leads a phrase that can say nothing of a thing, wherever it stands."""
COUNTING = frozenset(MONTHS) | word_set("""
    ago last next year years month months century edition yesterday tomorrow christmas easter
    time length angle slant tilt random ease attention mast height push
    not never no without neither nor only except unless instead else other another rather
    medical religious religion faith health safety protection reason reasons doctor physician
    dispensation permission permit exemption waiver chit clearance authorisation authorization licence
    certificate
""")
"""Words that move the day, that tell a way ("at an angle"), that deny, that put one thing for another, or
that give a reason which books may heed."""
COLLEAGUES = word_set("""
    pal pals buddy buddies oppo oppos mucker muckers chum chums comrade comrades teammate teammates classmate
    boss bosses gaffer guvnor foreman supervisor supervisors skipper skippers captain sergeant sarge corporal
    chief instructor instructors trainer manager inspector commander lieutenant major colonel deputy
    trainee trainees apprentice apprentices recruit recruits newbie newbies novice novices learner learners
    rookie rookies beginner beginners junior juniors senior seniors volunteer volunteers assistant helper
    mechanic mechanics electrician electricians cook cooks driver drivers engineer engineers clerk clerks
    medic medics nurse orderly storeman signaller steward stewards painter painters welder welders fitter
    technician technicians cleaner porter crewman crewmen bandsman bandsmen coworker coworkers newcomer
    newcomers squaddie squaddies
""")
"""Who may be one of the service, by a name for people that the books do not have."""
KIN = RELATIVES | word_set("""
    daughter son husband grandma grandmother grandfather aunt uncle niece nephew friend girlfriend boyfriend
    fiancee fiance kid kids parents godfather godmother godson goddaughter sweetheart teacher
""")
"""Who may give one a thing, or have an occasion of their own."""
