"""The sentences of a lesson: tool first, then where, then the reading on a line of its own."""

from collections.abc import Sequence

from pycore.words.phrase import Phrase, Symbol, listed_phrases, say

Name = Phrase | Symbol

STEP = "Step {step} of {steps}"
PART = "Step {step} of {steps}, move {part} of {parts}"
MARK = "the mark that you have just made"
ARCS_CROSS, LINES_MEET = "where the arcs cross", "where the two lines meet"


def faint_line_meets(line: Phrase) -> Phrase:
    """Where a faint line crosses the line of an arrow."""
    return say("where the faint line meets the line of {line}", line=line)


def mark_on(axis: Phrase) -> Phrase:
    """A mark on an axis."""
    return say("the mark on {axis}", axis=axis)


def step_of(step: int, steps: int, part: int = 1, parts: int = 1) -> str:
    """How far the lesson is: the number that the step has on the page, and the move within it."""
    return (PART if parts > 1 else STEP).format(step=step, steps=steps, part=part, parts=parts)


def why_at(place: str) -> str:
    """The heading of the picture that says why."""
    return f"Why, at {place[0].lower()}{place[1:]}"


def turned_at_tip(copy: Name, first: Name, angle: str) -> Phrase:
    """The angle between two phasors, found again at the tip of the first."""
    return say(
        "{copy} is turned {angle} from {first}. At the tip, its copy is turned {angle} from straight on.",
        copy=copy, first=first, angle=angle,
    )  # fmt: skip


def turns_at_tip(line: Name, first: Name, angle: str) -> Phrase:
    """The direction of the next phasor, from straight on."""
    return say("{line} is turned {angle} from {first}: from straight on, at the tip.", line=line, first=first,
               angle=angle)  # fmt: skip


FROM_BACK = say("You measure from straight back. What is left of half a turn:")
STRAIGHT_ON = "straight on"
HALF_TURN = "half a turn, 180°"


def supplement(outside: str, inside: str) -> Phrase:
    """What is left of half a turn."""
    return say("180° − {outside} = {inside}", outside=outside, inside=inside)


def copy_of(name: Name) -> Phrase:
    """A dashed copy of a phasor."""
    return say("copy of {name}", name=name)


def scale(words: str) -> Phrase:
    """The scale is chosen before anything is drawn."""
    return say("Choose the scale: {words}.", words=words)


def scale_reading(longest: str, length: str) -> Phrase:
    """What the scale makes of the longest line."""
    return say("{longest} is {length} long.", longest=longest, length=length)


def ruler_first(place: Phrase | str, direction: str) -> Phrase:
    """The ruler for the first arrow."""
    return say("Ruler’s zero mark on {place}, its edge {direction}.", place=place, direction=direction)


def ruler_on_line(place: Phrase | str, line: Name) -> Phrase:
    """The ruler along a line that is on the paper already."""
    return say("Ruler’s zero mark on {place}, its edge along {line}.", place=place, line=line)


def ruler_back_on_line(place: Phrase | str, line: Name) -> Phrase:
    """The ruler straight back along a line that ends where it starts."""
    return say("Ruler’s zero mark on {place}, its edge back along {line}.", place=place, line=line)


def ruler_beyond(place: Phrase | str, line: Name) -> Phrase:
    """The ruler along a line and beyond its start."""
    return say("Ruler’s zero mark on {place}, its edge along {line} extended backwards.", place=place, line=line)


def ruler_parallel(place: Phrase | str, line: Name) -> Phrase:
    """The ruler along the parallel that a set square gave."""
    return say("Ruler’s zero mark on {place}, its edge parallel to {line}.", place=place, line=line)


def ruler_on_side(place: Phrase | str, end: Phrase) -> Phrase:
    """The ruler along a dashed line between two points."""
    return say("Ruler’s zero mark on {place}, its edge along the dashed line to {end}.", place=place, end=end)


def mark_length(component: str) -> Phrase:
    """A part marked on an axis, without an arrow."""
    return say("Mark {component}.", component=component)


def ruler_along_mark(place: Phrase | str) -> Phrase:
    """The ruler through a mark that the protractor gave."""
    return say("Ruler’s zero mark on {place}, its edge through the mark.", place=place)


def draw_length(name: Name, length: str) -> Phrase:
    """The length set off."""
    return say("Draw {name}, {length}.", name=name, length=length)


def draw_companion(name: Name, length: str) -> Phrase:
    """The length of a phasor of another quantity set off."""
    return say("Draw {name}, {length}: double line, open arrowhead.", name=name, length=length)


def protractor(place: Phrase | str, zero: Name, *, back: bool) -> Phrase:
    """The protractor laid on."""
    along = "back along" if back else "along"
    return say(
        "Protractor’s centre on {place}, zero line {along} {zero}.", place=place, along=along, zero=zero
    )


def mark_angle(angle: str, sense: str) -> Phrase:
    """The angle set off."""
    return say("Mark {angle} {sense}.", angle=angle, sense=sense)


def faint_to(place: Phrase, line: Name) -> Phrase:
    """A faint line through the mark to another line."""
    return say(" Draw a faint line from {place} through the mark to the line of {line}.", place=place, line=line)


def faint_through(place: Phrase) -> Phrase:
    """A faint line through the mark, in both directions."""
    return say(" Draw a long faint line through the mark and {place}.", place=place)


def read_angle(angle: str, sense: str) -> Phrase:
    """The angle read."""
    return say("Read {angle} {sense}.", angle=angle, sense=sense) if sense else say("Read {angle}.", angle=angle)


def result(name: Name, amount: str) -> Phrase:
    """The answer of a drawing, behind its direction."""
    return say(" {name} is {amount}.", name=name, amount=amount)


def ask_angle(line: Name) -> Phrase:
    """What is asked while the angle to a line is hidden."""
    return say("How many degrees to {line} do you read on your own protractor?", line=line)


def ask_angle_to_mark(line: Name) -> Phrase:
    """What is asked while an angle to be marked is hidden."""
    return say("How many degrees do you mark from {line}, and why?", line=line)


def ask_length_to_draw(line: Name) -> Phrase:
    """What is asked while the length of a line to be drawn is hidden."""
    return say("How long is {line} on paper?", line=line)


def measure_angle(line: Name, angle: str) -> Phrase:
    """An angle that a learner takes from their own drawing."""
    return say("Read the angle to {line}: about {angle}.", line=line, angle=angle)


def mark_supplement(angle: str, sense: str) -> Phrase:
    """The angle set off that follows from the learner's own reading."""
    return say("Mark about {angle} {sense}.", angle=angle, sense=sense)


def count(scale: str) -> Phrase:
    """Which scale of the protractor counts."""
    return say("Start at 0: use the {scale} scale.", scale=scale)


INNER, OUTER = "inner", "outer"


def dash(place: Phrase) -> Phrase:
    """The dashed line through a mark."""
    return say("Ruler on {place}, its edge through the mark.", place=place)


def dash_along_square(place: Phrase) -> Phrase:
    """The dashed line along a set square."""
    return say("Pencil along the set square, from {place}.", place=place)


def draw_dashed(length: str) -> Phrase:
    """The dashed line drawn."""
    return say("Draw a dashed line, {length}.", length=length)


def draw_as_diagonal(length: str) -> Phrase:
    """The dashed line that is as long as the measured diagonal."""
    return say("Draw a dashed line as long as your diagonal (about {length}).", length=length)


def slide(to: Name, place: Phrase | str) -> Phrase:
    """A set square slid along a ruler."""
    return say(
        "Put one side of the set square along {to}, the ruler against another side. Slide the set square to "
        "{place}.",
        to=to,
        place=place,
    )


def drop(name: Name, axis: Name) -> Phrase:
    """A set square on an axis, through a tip."""
    return say((
        "One edge of the set square along {axis}, the other edge through the tip of {name}."
    ), axis=axis, name=name)


def tip_on_axis(name: Name, axis: Name) -> Phrase:
    """A phasor along an axis has no component on the other."""
    return say("The tip of {name} is on {axis}.", name=name, axis=axis)


def there_is(component: str) -> Phrase:
    """A component of zero."""
    return say("There is {component}.", component=component)


DROP_READING = say("Draw a dashed line to the axis.")


def compasses(opened: Name, place: Phrase) -> Phrase:
    """Compasses opened to a copied length."""
    return say("Open the compasses to the length of {opened}. Point on {place}.", opened=opened, place=place)


def arc(length: str) -> Phrase:
    """An arc of a copied length."""
    return say("Draw an arc with radius {length}.", length=length)


def join(start: Phrase | str, end: Phrase | str) -> Phrase:
    """The ruler for a line between two points."""
    return say("Ruler from {start} to {end}.", start=start, end=end)


def draw_name(name: Name) -> Phrase:
    """A line drawn between two points."""
    return say("Draw {name}.", name=name)


def ruler_along(name: Name, place: Phrase | str) -> Phrase:
    """The ruler laid along a line to read it."""
    return say("Ruler along {name}, its zero mark on {place}.", name=name, place=place)


def read_length(length: str) -> Phrase:
    """The length read."""
    return say("Read {length}.", length=length)


def draw_and_read(name: Name, length: str) -> Phrase:
    """A line drawn and measured."""
    return say("Draw {name} and measure it: {length}.", name=name, length=length)


def represents(scale: str, name: Name, product: str, calculated: str) -> Phrase:
    """What a read length represents, by the printed numbers, and the calculated value."""
    return say(
        "At {scale}, {name} is {product} (calculated: {calculated}).",
        scale=scale, name=name, product=product, calculated=calculated,
    )  # fmt: skip


def faint(name: Name, direction: str, place: str) -> Phrase:
    """A faint direction."""
    return say(
        "Draw a faint line {direction} from {place}: it is {name}.", name=name, direction=direction, place=place
    )


CHOOSE_SCALE = say("Choose the scale.")
ASK_LENGTH = say("How many millimetres do you read on your own ruler?")
ASK_DASHED_LENGTH = say("How long is the dashed line on paper?")
ASK_LENGTH_TO_MARK = say("How many millimetres do you mark?")
ASK_SCALE = say("Which scale?")
ASK_OPENING = say("How far apart are the two points of the compasses?")


def no_such_step(requested: str, steps: int, opened: str) -> str:
    """A step out of range, or none at all."""
    return f"There is no step {requested[:12]!r}. There are {steps} steps. {opened} is shown."


def no_such_place(requested: str, opened: str) -> str:
    """A place in a lesson that a link names, and that there is not."""
    return f"There is no place {requested[:12]!r} in this lesson. {opened} is shown."


def no_such_view(requested: str) -> str:
    """A view that no lesson has."""
    return f"There is no view {requested[:12]!r}. The drawing is shown one move at a time."


def view_not_here(title: str) -> str:
    """A view that other problems have."""
    return f"This problem has no view “{title}”. The drawing is shown one move at a time."


def together(method: str) -> Phrase:
    """One more construction laid over the others."""
    return say("{method}. The sum ends at the same point, in the small circle.", method=method)


def together_first(method: str) -> Phrase:
    """The first of the constructions that are laid over each other."""
    return say("{method}. The sum ends in the small circle.", method=method)


def together_reading(name: Name, amount: str) -> Phrase:
    """The sum that every construction ends on."""
    return say("{name} is {amount}.", name=name, amount=amount)


TOGETHER_WHY = say("Neither the order nor the method changes the sum.")


def rope(name: Name, amount: str, *, is_first: bool) -> Phrase:
    """One rope more."""
    rope = "A rope" if is_first else "One more rope"
    return say("{rope} pulls the ring in the direction of {name}: {amount}.", rope=rope, name=name, amount=amount)


def net_pull(name: Name, amount: str) -> Phrase:
    """The one pull that would do the same."""
    return say("One pull would do the same: {name}, {amount}.", name=name, amount=amount)


NO_PULL = say("The pulls add to zero: the ring does not move.")


def balancing(name: Name) -> Phrase:
    """The pull that keeps the ring at rest."""
    return say("Which pull keeps the ring at rest? One as large as {name}, straight opposite.", name=name)


NOTHING_TO_BALANCE = say("Which pull keeps the ring at rest? None is needed.")


def balancing_pull(name: Name, amount: str) -> Phrase:
    """The balancing pull with its size."""
    return say("{name}: {amount}.", name=name, amount=amount)


def analogy(plural: str) -> Phrase:
    """What the picture is not."""
    return say(
        "This is only a comparison. The {plural} do not pull, but they add like pulls, by size and direction.",
        plural=plural,
    )


def waves(quantity: str, angle: str) -> Phrase:
    """The waves at an angle."""
    return say("After {angle} of a turn each arrow’s height is its {quantity}.", quantity=quantity, angle=angle)


def peaks(amounts: Sequence[str]) -> Phrase:
    """How long the arrows of the waves are."""
    return say("Peaks: √2 × {amounts}", amounts=listed_phrases([(amount,) for amount in amounts]))


def moment(parts: Sequence[tuple[Name, str]], name: Name, amount: str, *, exact: bool) -> Phrase:
    """The sum of the values at one moment. ``exact``: the numbers add up as they are printed."""
    pieces: Phrase = ()
    for index, (tag, value) in enumerate(parts):
        shown = f"({value})" if value[:1] in "−-" else value
        pieces += say(" + {tag} {value}" if index else "{tag} {value}", tag=tag, value=shown)
    return pieces + say(" = **{name} {amount}**" if exact else " ≈ **{name} {amount}**", name=name, amount=amount)


def waves_why(name: Name, arrows: Sequence[Phrase]) -> Phrase:
    """The sum's wave, and the arrows that it is the sum of."""
    is_sum = "is the sum of" if len(arrows) > 1 else "is equal to"
    return say(
        "At every moment {name} {is_sum} {arrows}. The height of its wave is √2 times the height of its arrow. For "
        "sine waves the peak is √2 times the r.m.s. value that a meter shows.",
        name=name,
        is_sum=is_sum,
        arrows=listed_phrases(arrows),
    )
