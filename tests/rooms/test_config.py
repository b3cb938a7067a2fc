"""Settings: what the environment says is what the bot runs with, or is refused by name."""

from pathlib import Path

import pytest

from bot.assembly import rules
from bot.config import Door, Listen, Settings, settings
from core.errors import Missing, OutOfRange, Unreadable
from core.service.admission import Rules

HOME = {"XDG_DATA_HOME": "/srv/data"}


def test_an_empty_environment_is_enough_for_the_chat() -> None:
    """Nothing set: the database and the pictures lie in the user's data folder, no zone is claimed, polling."""
    assert settings(HOME) == Settings(
        database="/srv/data/saltbell/saltbell.db", pictures=Path("/srv/data/saltbell/pictures")
    )


@pytest.mark.parametrize("said", [{}, {"XDG_DATA_HOME": ""}, {"XDG_DATA_HOME": "not/absolute"}])
def test_the_data_folder_falls_back_to_the_home(said: dict[str, str]) -> None:
    """Without an absolute XDG_DATA_HOME the data lie in ~/.local/share (XDG base directory rules)."""
    assert Path(settings(said).database) == Path.home() / ".local/share/saltbell/saltbell.db"


def test_everything_that_is_set_is_taken() -> None:
    """Every variable of the list reaches its field."""
    said = settings(
        {
            "SALTBELL_TOKEN": "1:a",
            "SALTBELL_DATABASE": "/srv/s.db",
            "SALTBELL_ZONE": "America/Chicago",
            "SALTBELL_MODE": "Webhook",
            "SALTBELL_WEBHOOK_URL": "https://bot.example.org/in",
            "SALTBELL_WEBHOOK_SECRET": "abc_-1",
            "SALTBELL_LISTEN": "0.0.0.0:9000",
            "SALTBELL_API_URL": "http://127.0.0.1:8081/bot",
            "SALTBELL_PICTURES": "/srv/pictures",
            "SALTBELL_LOG": "INFO",
            "SALTBELL_LOG_AS": "json",
            "SALTBELL_KEEPER": "700000",
            "SALTBELL_METRICS": "127.0.0.1:9108",
            "SALTBELL_ALLOWED": "700000, -1005;42",
            "SALTBELL_INVITATION": "supper_-2027",
            "SALTBELL_CHAT_A_DAY": "50",
            "SALTBELL_NEW_CHATS_A_DAY": "0",
            "SALTBELL_A_SECOND": "300",
        }
    )
    assert said == Settings(
        token="1:a",
        database="/srv/s.db",
        zone="America/Chicago",
        mode="webhook",
        webhook_url="https://bot.example.org/in",
        webhook_secret="abc_-1",
        listen=Listen("0.0.0.0", 9000),  # noqa: S104 - what a container says
        api_url="http://127.0.0.1:8081/bot",
        pictures=Path("/srv/pictures"),
        log="info",
        log_as="json",
        keeper="700000",
        metrics=Listen("127.0.0.1", 9108),
        door=Door(frozenset({"700000", "-1005", "42"}), "supper_-2027", 50, 0),
        a_second=300,
    )


def test_the_example_for_a_machine_names_every_variable() -> None:
    """deploy/saltbell.env.example and bot/config.py speak of the same variables."""
    top = Path(__file__).parents[2]
    words = {w for w in (top / "bot/config.py").read_text().split() if w.startswith("SALTBELL_") and w.isupper()}
    example = (top / "deploy/saltbell.env.example").read_text()
    lines = [line.lstrip("# ") for line in example.splitlines()]
    assert {line.split("=")[0] for line in lines if line.startswith("SALTBELL_") and "=" in line} == words


def test_the_example_as_it_stands_is_readable() -> None:
    """Filled in as it is, with its commented lines uncommented, the example is a set of settings."""
    example = (Path(__file__).parents[2] / "deploy/saltbell.env.example").read_text().splitlines()
    pairs = (
        line.lstrip("# ").split("=", 1) for line in example if line.lstrip("# ").startswith("SALTBELL_") and "=" in line
    )
    assert settings(dict(pairs)).database


@pytest.mark.parametrize(
    ("database", "url"),
    [
        ("/srv/s.db", "sqlite:////srv/s.db"),
        ("sqlite:////srv/s.db", "sqlite:////srv/s.db"),
        ("postgresql+psycopg://cook@db/saltbell", "postgresql+psycopg://cook@db/saltbell"),
    ],
)
def test_a_file_and_a_url_both_name_a_database(database: str, url: str) -> None:
    """A path becomes the URL of an SQLite file; a URL stays as it is."""
    assert settings({"SALTBELL_DATABASE": database}).database_url == url


@pytest.mark.parametrize(
    ("name", "value"),
    [
        ("ZONE", "Europe/Nowhere"),
        ("ZONE", "../../etc/passwd"),
        ("MODE", "pigeon"),
        ("LOG", "loud"),
        ("LISTEN", "8080"),
        ("LISTEN", "localhost:web"),
        ("WEBHOOK_URL", "http://bot.example.org"),
        ("WEBHOOK_SECRET", "with space"),
        ("WEBHOOK_SECRET", "x" * 257),
    ],
)
def test_what_cannot_be_read_is_refused_by_name(name: str, value: str) -> None:
    """A value that means nothing is refused at the start, and the refusal names the variable."""
    with pytest.raises(Unreadable) as refused:
        settings({f"SALTBELL_{name}": value})
    assert refused.value.where == f"SALTBELL_{name}"


@pytest.mark.parametrize("port", ["0", "65536"])
def test_a_port_that_cannot_be_is_refused(port: str) -> None:
    """Ports run from 1 to 65535."""
    with pytest.raises(OutOfRange):
        settings({"SALTBELL_LISTEN": f"127.0.0.1:{port}"})


def test_an_ipv6_address_is_an_address() -> None:
    """The host may stand in brackets, as in a URL."""
    assert settings({"SALTBELL_LISTEN": "[::1]:8080"}).listen == Listen("::1", 8080)


@pytest.mark.parametrize(
    ("said", "missing"),
    [
        ({}, "SALTBELL_TOKEN"),
        ({"SALTBELL_TOKEN": "  "}, "SALTBELL_TOKEN"),
        ({"SALTBELL_TOKEN": "1:a", "SALTBELL_MODE": "webhook"}, "SALTBELL_WEBHOOK_URL"),
        (
            {"SALTBELL_TOKEN": "1:a", "SALTBELL_MODE": "webhook", "SALTBELL_WEBHOOK_URL": "https://a.example"},
            "SALTBELL_WEBHOOK_SECRET",
        ),
    ],
)
def test_running_for_real_needs_a_token(said: dict[str, str], missing: str) -> None:
    """`saltbell run` without its token, or a webhook without address and secret, is refused by name."""
    with pytest.raises(Missing) as refused:
        settings(said).ready_to_run()
    assert refused.value.quantity == missing


def test_polling_with_a_token_is_ready() -> None:
    """A token is all that polling needs."""
    ready = settings({"SALTBELL_TOKEN": "1:a"})
    assert ready.ready_to_run() is ready


def test_secrets_do_not_show() -> None:
    """Printing the settings, as a log or a traceback may, shows neither the token nor the secret."""
    shown = repr(settings({"SALTBELL_TOKEN": "1:hush", "SALTBELL_WEBHOOK_SECRET": "quiet"}))
    assert "hush" not in shown
    assert "quiet" not in shown


def test_an_open_bot_has_limits_unless_it_is_told_otherwise() -> None:
    """Nobody's empty environment is open without end; 0 says so on purpose. The code does not show when printed."""
    assert settings(HOME).door == Door(frozenset(), None, 500, 100)
    open_ended = settings({"SALTBELL_CHAT_A_DAY": "0", "SALTBELL_NEW_CHATS_A_DAY": "0"})
    assert rules(open_ended) == Rules()
    assert rules(settings({"SALTBELL_INVITATION": "supper-2027", "SALTBELL_KEEPER": "1"})).private
    assert "supper-2027" not in repr(settings({"SALTBELL_INVITATION": "supper-2027"}))


@pytest.mark.parametrize(
    ("name", "said"),
    [
        ("ALLOWED", "7, @ida"),
        ("ALLOWED", "7.5"),
        ("INVITATION", "short"),
        ("INVITATION", "has a blank"),
        ("INVITATION", "x" * 65),
        ("CHAT_A_DAY", "-1"),
        ("CHAT_A_DAY", "many"),
        ("NEW_CHATS_A_DAY", "1.5"),
        ("A_SECOND", "0"),
    ],
)
def test_a_door_that_cannot_be_is_refused_by_name(name: str, said: str) -> None:
    """A slip must not leave the door open: the bot does not start."""
    with pytest.raises(Unreadable) as trouble:
        settings({f"SALTBELL_{name}": said})
    assert trouble.value.where == f"SALTBELL_{name}"
