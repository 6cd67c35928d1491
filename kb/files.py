"""Files: atomic writes, and the data folders that come with the program."""

from __future__ import annotations

import errno
import os
import stat
from pathlib import Path

from kb.errors import StoreUnavailableError

_PACKAGE = Path(__file__).parent


def data_folder(name: str) -> Path:
    """A data folder ("ontology"): inside the installed package, else beside it in a checkout."""
    packaged = _PACKAGE / "data" / name
    return packaged if packaged.is_dir() else _PACKAGE.parent / name


def find_files(folder: Path) -> tuple[list[str], list[tuple[str, OSError]]]:
    """The names, relative to the folder, of all in it and below that is no folder; and of the folders that
    cannot be listed, with the reason. Links to folders are named and not entered.

    Not `os.walk`, which passes over what it cannot list and is recursive before Python 3.12.
    """
    names: list[str] = []
    failed: list[tuple[str, OSError]] = []
    waiting = [""]
    while waiting:
        above = waiting.pop()
        try:
            with os.scandir(f"{folder}{os.sep}{above}") as entries:
                for entry in entries:
                    if entry.is_dir(follow_symlinks=False):
                        waiting.append(f"{above}{entry.name}/")
                    else:
                        names.append(f"{above}{entry.name}")
        except OSError as error:
            failed.append((above.rstrip("/"), error))
    return names, failed


def is_file(path: str) -> bool:
    """Whether a plain file stands there, also behind links. Raises `OSError` where one may not look.

    Not `Path.is_file`: it takes twice the time, and from Python 3.13 on hides what it may not see.
    """
    try:
        return stat.S_ISREG(os.stat(path).st_mode)  # noqa: PTH116
    except OSError as error:
        if error.errno in (errno.ENOENT, errno.ENOTDIR, errno.ELOOP):
            return False
        raise


def _mode_for(path: Path) -> int:
    """The mode a plain `open` would leave: the old file's, else 0666 less the umask."""
    try:
        return path.stat().st_mode & 0o777
    except FileNotFoundError:
        umask = os.umask(0)
        os.umask(umask)
        return 0o666 & ~umask


def _refuse_special(path: Path) -> None:
    if os.path.lexists(path) and not path.is_file():
        raise StoreUnavailableError(f"{path} cannot be written: it is not a plain file.")


def write_atomically(path: Path, data: bytes) -> None:
    """Write the whole file or nothing: temporary file beside it, fsync, replace, fsync the folder.

    A symbolic link is followed. Raises `StoreUnavailableError` if the file cannot be written, or the
    path names a folder, device or pipe, whose place a file must not take.
    """
    import tempfile  # noqa: PLC0415  asking a question writes nothing

    try:
        path = Path(os.path.realpath(path))  # unlike `resolve`, never raises for links in a circle
        _refuse_special(path)
        mode = _mode_for(path)
        handle, temporary = tempfile.mkstemp(prefix=f".{path.name[:50]}.", suffix=".tmp", dir=path.parent)
        try:
            with os.fdopen(handle, "wb") as stream:
                stream.write(data)
                stream.flush()
                os.fchmod(stream.fileno(), mode)
                os.fsync(stream.fileno())
            Path(temporary).replace(path)
        except BaseException:
            Path(temporary).unlink(missing_ok=True)
            raise
        folder = os.open(path.parent, os.O_RDONLY)
        try:
            os.fsync(folder)
        finally:
            os.close(folder)
    except OSError as error:
        raise StoreUnavailableError(f"{path} cannot be written: {error.strerror or error}.") from error
