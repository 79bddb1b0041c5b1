"""What is said of currents that lag their own voltages by different angles: thin lines, and angles as sums."""

from collections.abc import Sequence

from pycore.words.phrase import Phrase, listed_phrases, say

Name = Phrase


def voltages(tags: Sequence[Name], place: str, lines: Sequence[Phrase]) -> Phrase:
    """Thin lines in the directions of the voltages, each from a line that is there."""
    head = say("**Draw thin lines for {tags}** from {place}.", tags=listed_phrases(tags), place=place)
    return head + tuple(piece for line in lines for piece in (" ", *line))


def points(tag: Name, direction: str) -> Phrase:
    """A voltage that points in the first direction."""
    return say("{tag} points {direction}.", tag=tag, direction=direction)


def turned_from(tag: Name, turned: str, line: Name | str) -> Phrase:
    """A voltage by its angle from a line or a direction."""
    return say("{tag}: {turned} from {line}.", tag=tag, turned=turned, line=line)


def voltages_why(sense: str) -> Phrase:
    """Why the voltages come first."""
    return say("Each current is turned by its own φ from its own voltage: {sense} if it lags.", sense=sense)


def lags(current: Name, voltage: Name, angle: str) -> Phrase:
    """A current behind its voltage."""
    return say("{current} lags {voltage} by {angle}.", current=current, voltage=voltage, angle=angle)


def leads(current: Name, voltage: Name, angle: str) -> Phrase:
    """A current ahead of its voltage."""
    return say("{current} leads {voltage} by {angle}.", current=current, voltage=voltage, angle=angle)


def in_phase(current: Name, voltage: Name) -> Phrase:
    """A current along its voltage."""
    return say("{current} is in phase with {voltage}.", current=current, voltage=voltage)


def angle_between(line: Name, added: str, total: str, sense: str) -> Phrase:
    """An angle on paper as the sum that it is."""
    return say(" From {line}: {added} = {total} {sense}.", line=line, added=added, total=total, sense=sense)
