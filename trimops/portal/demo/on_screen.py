"""The demo's progress bar and its table of sign-ins."""

from collections.abc import Sequence

from rich.console import Console
from rich.progress import BarColumn, Progress, SpinnerColumn, TextColumn, TimeElapsedColumn
from rich.table import Table


def progress_bar(console: Console) -> Progress:
    """Spinner, words, bar and the time gone; leaves no trace when done."""
    return Progress(
        SpinnerColumn(),
        TextColumn("{task.description:<32}"),
        BarColumn(bar_width=36),
        TextColumn("{task.percentage:>3.0f} %"),
        TimeElapsedColumn(),
        console=console,
        transient=True,
    )


def sign_in_table(rows: Sequence[tuple[str, str, str]]) -> Table:
    """Part, e-mail and password."""
    table = Table(title="Sign in", title_justify="left")
    for heading in ("As", "E-mail", "Password"):
        table.add_column(heading, no_wrap=True)
    for row in rows:
        table.add_row(*row)
    return table
