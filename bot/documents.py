"""From what is kept to the files that a reply encloses; made when the reply goes out, as pictures are."""

from datetime import datetime

from bot.kept import exported
from bot.papers.forms import FORMS
from bot.reply import Document, DocumentWanted
from bot.wording import privacy, records
from core.service import papers
from core.service.turn import House


def made(house: House, wanted: DocumentWanted, now: datetime) -> Document | None:
    """The file that is wanted, None where what it was about is gone."""
    if wanted.person is not None:
        content = exported(papers.of_person(house, wanted.person))
        return Document(content, f"my-data-{now:%Y-%m-%d}.json", privacy.not_taken())
    found = papers.of_batch(house, wanted.batch or "", now)
    if found is None:
        return None
    content = FORMS[wanted.form](found)
    local = found.made_at.astimezone(found.a.person.tz)
    name = f"record-{found.a.batch.name.replace(' ', '-')}-{local:%Y-%m-%d}.{wanted.form}"
    return Document(content, name, records.not_taken())
