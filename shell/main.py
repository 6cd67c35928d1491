"""The program `clothbound`: picks the command, and turns whatever happens into an exit code."""

from __future__ import annotations

import errno
import gc
import os
import sys
from collections.abc import Sequence
from typing import TYPE_CHECKING

import kb
from shell.output import complain, complain_problems
from shell.quick import bare_question
from shell.run import COMMANDS

if TYPE_CHECKING:
    from shell.quick import Arguments

_BUG = 70
_INTERRUPTED = 130
_PIPE_CLOSED = 141


def _prepare_streams() -> None:
    """Streams that were closed lead nowhere; characters that an encoding lacks are shown as escapes."""
    for name, mode in (("stdin", "r"), ("stdout", "w"), ("stderr", "w")):
        if getattr(sys, name) is None:  # or the next file opened would get its number
            setattr(sys, name, open(os.devnull, mode, encoding="utf-8"))  # noqa: PTH123, SIM115
    for stream in (sys.stdout, sys.stderr):
        reconfigure = getattr(stream, "reconfigure", None)
        if reconfigure is not None:
            reconfigure(errors="backslashreplace")


def _drop_output() -> None:
    """Keep the interpreter from trying once more at its end to write what could not be written."""
    os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())


def _pipe_closed() -> int:
    """The reader has gone: leave quietly."""
    _drop_output()
    return _PIPE_CLOSED


def _failed(error: OSError) -> int:
    """A full or broken disk under the output is no bug; any other failure that comes up to here is."""
    if error.errno not in (errno.ENOSPC, errno.EDQUOT, errno.EFBIG, errno.EIO):
        return _bug(error)
    _drop_output()
    complain(f"The output cannot be written: {error.strerror}.")
    return kb.StoreUnavailableError.exit_code


def _bug(error: BaseException) -> int:
    complain(
        f"internal error: {type(error).__name__}: {str(error)[:200]}; please report it. "
        "CLOTHBOUND_DEBUG=1 shows where."
    )
    if os.environ.get("CLOTHBOUND_DEBUG") == "1":
        import traceback  # noqa: PLC0415  seldom needed, and slow to load

        complain(traceback.format_exc())
    return _BUG


def _arguments(argv: Sequence[str]) -> Arguments:
    bare = bare_question(argv)
    if bare is not None:
        return bare
    from shell.arguments import make_parser  # noqa: PLC0415  see `bare_question`

    arguments = make_parser(argv).parse_args(argv)
    folder = getattr(arguments, "folder", None)
    if folder is not None and arguments.books not in (None, folder):
        raise kb.UsageError(
            f"Two folders of rule books are given, {arguments.books} and {folder}. Write one."
        )
    arguments.books = folder or arguments.books
    return arguments


def main(argv: Sequence[str] | None = None) -> int:
    """Run one command; exit code 0, 2 usage, 3 invalid data, 4 not settled, 5 store, 70 bug, 130 stopped."""
    _prepare_streams()
    try:
        arguments = _arguments(sys.argv[1:] if argv is None else argv)
        if arguments.command != "ask":
            gc.enable()
        code = COMMANDS[arguments.command](arguments)
        sys.stdout.flush()
        return code
    except SystemExit as leave:  # argparse after --help and --version
        return int(leave.code or 0)
    except KeyboardInterrupt:
        return _INTERRUPTED
    except BrokenPipeError:
        return _pipe_closed()
    except kb.InvalidDataError as error:
        complain_problems(error.problems)
        return error.exit_code
    except kb.ClothboundError as error:
        complain(str(error))
        return error.exit_code
    except OSError as error:
        return _failed(error)
    except Exception as error:  # the last resort: no traceback ever reaches a user
        return _bug(error)
    finally:
        gc.enable()


def program() -> int:
    """`main` for a process of its own: what it leaves is not searched for garbage, since all of it goes."""
    code = main()
    gc.freeze()
    return code


if __name__ == "__main__":
    sys.exit(program())
