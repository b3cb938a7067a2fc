"""A paper as one page of HTML: nothing is fetched, it reads on a phone, and it prints.

Every word goes through `html.escape`; the page forbids itself scripts and anything from elsewhere.
"""

from html import escape
from string import Template
from typing import Final

from bot.paper import Paper, Section, Table

PAGE: Final = Template("""<!DOCTYPE html>
<html lang="$language">
<head>
<meta charset="utf-8" />
<meta name="viewport" content="width=device-width, initial-scale=1" />
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'" />
<title>$title</title>
<style>
body { font: 16px/1.45 system-ui, sans-serif; color: #1b1b1b; background: #fff;
  max-width: 60rem; margin: 0 auto; padding: 1rem; }
h1 { font-size: 1.5rem; margin: 0 0 .5rem; }
h2 { font-size: 1.15rem; margin: 1.75rem 0 .4rem; border-bottom: 1px solid #8a8a8a; }
p { margin: .3rem 0; overflow-wrap: anywhere; }
.lead { border-left: 4px solid #6b4a2b; padding-left: .75rem; }
table { border-collapse: collapse; width: 100%; margin-top: .5rem; font-size: .92rem; }
th, td { text-align: left; vertical-align: top; padding: .3rem .5rem .3rem 0; border-bottom: 1px solid #c9c9c9;
  overflow-wrap: anywhere; white-space: pre-line; }
footer { margin-top: 2rem; font-size: .88rem; }
@media (max-width: 40rem) {
  thead { position: absolute; left: -99rem; }
  tr { display: block; padding: .5rem 0; border-bottom: 1px solid #8a8a8a; }
  td { display: block; border: 0; padding: .1rem 0; }
  td::before { content: attr(data-head) ": "; font-weight: 600; }
}
@media print {
  body { font-size: 10pt; max-width: none; padding: 0; }
  thead { display: table-header-group; }
  tr, h2 { break-inside: avoid; }
  h2 { break-after: avoid; }
}
</style>
</head>
<body>
<main>
<h1>$title</h1>
<div class="lead">
$lead
</div>
$sections
</main>
<footer>
$foot
</footer>
</body>
</html>
""")
SECTION: Final = Template("<section>\n<h2>$title</h2>\n$lines\n$table\n</section>")
TABLE: Final = Template("<table>\n<thead>\n<tr>$head</tr>\n</thead>\n<tbody>\n$rows\n</tbody>\n</table>")


def page(paper: Paper) -> bytes:
    """The page. [UTF-8]"""
    return PAGE.substitute(
        language=escape(paper.language),
        title=_text(paper.title),
        lead=_lines(paper.lead),
        sections="\n".join(map(_section, paper.sections)),
        foot=_lines(paper.foot),
    ).encode()


def _section(section: Section) -> str:
    table = "" if section.table is None else _table(section.table)
    return SECTION.substitute(title=_text(section.title), lines=_lines(section.lines), table=table)


def _table(table: Table) -> str:
    head = "".join(f'<th scope="col">{_text(name)}</th>' for name in table.head)
    return TABLE.substitute(head=head, rows="\n".join(_row(row, table.head) for row in table.rows))


def _row(row: tuple[str, ...], head: tuple[str, ...]) -> str:
    cells = (f'<td data-head="{_text(name)}">{_text(cell)}</td>' for name, cell in zip(head, row, strict=True))
    return f"<tr>{''.join(cells)}</tr>"


def _lines(lines: tuple[str, ...]) -> str:
    return "\n".join(f"<p>{_text(line)}</p>" for line in lines)


def _text(words: str) -> str:
    """Words as the page holds them: escaped, and without the signs that no page may hold."""
    return escape("".join(sign for sign in words if sign.isprintable() or sign == "\n"), quote=True)
