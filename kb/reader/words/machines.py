"""Machines by everyday names, and what is said of one that is running or moving.

Where a book speaks of machinery, any of them is meant. They are under "machine" in
WordNet, or from memory: common practice, no source.
"""

from __future__ import annotations

from kb.reader.words.forms import word_set

MACHINERY = word_set("machinery machine machines")
MACHINES = word_set("""
    lathe drill saw bandsaw jigsaw chainsaw mincer slicer mixer blender grinder sander planer press conveyor
    winch crane hoist pump compressor generator motor engine turbine separator centrifuge chipper shredder
    mower strimmer baler guillotine mill roller shaft liquidiser processor sheeter peeler bottler
    capper labeller loom escalator travelator capstan windlass auger agitator propeller screw gearbox flywheel
    dynamo blower fan crusher cutter chopper trimmer strapper wrapper stapler router planer moulder lapper
    hammermill turntable treadmill bullwheel machine machinery
""")
"""The last words of their names, as keys: "the meat slicer", "a pillar drill"."""
RUNNING = (
    r"(?:running|going|moving|turning|spinning|working|whirring|whirling|rotating|churning|humming|in motion"
    r"|in operation|in use|switched on|turned on|started up|live|on)(?: (?:now|again|away|round|flat out))*"
)
"""What is said of a machine that runs, after "is"."""
