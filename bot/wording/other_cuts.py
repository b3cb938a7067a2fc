"""Words for a meat that is none, and for a cut that nothing is planned for by its name."""

from bot.intents.intents import Choose
from bot.wording import meat_names
from bot.wording.asking import Rows, button
from bot.wording.language import say


def unknown_meat(said: str) -> str:
    """A meat that is none, or none that is planned yet."""
    return say(
        "I do not know «{said}» as a cut. Type it with its weight, like «3.2 kg brisket flat» or «2 kg pork belly».\n"
        "I plan {planned}.",
        said=said,
        planned=meat_names.planned(),
    )


_NEAREST = {  # by their build. Common practice, no source
    **dict.fromkeys(("sirloin", "rump", "tri tip", "tritip"), ("beef_round", "brisket_flat")),
    **dict.fromkeys(("navel", "flank", "cheek", "cheeks"), ("brisket_point", "brisket_flat")),
}


def like_cut(said: str) -> tuple[str, Rows] | None:
    """The planned cuts that are built like one that has no plan of its own; None where none is."""
    if said not in _NEAREST:
        return None
    row = tuple(button(meat_names.cut_name(c), Choose("cut", c)) for c in _NEAREST[said])
    text = say(
        "I plan no «{said}» by that name: tap the cut that is most like it.\n"
        "The cure goes by the weight and by the thickest spot, so measure that with a ruler.",
        said=said,
    )
    return text, (row,)
