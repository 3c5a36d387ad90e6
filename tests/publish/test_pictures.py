"""The pictures of a journal on their way to the site: which files, in which sizes, and what refuses them."""

from __future__ import annotations

from pathlib import Path

import pytest
from PIL import Image

from builder.publish.pictures import PhotoError, prepare_photos
from builder.store.store import Store


def test_every_picture_comes_in_its_widths_with_the_size_of_the_widest(tmp_path: Path) -> None:
    """Smallest first, each a file of the site."""
    Image.effect_noise((1000, 500), 60).save(tmp_path / "a.png")
    prepared = prepare_photos(("a.png",), tmp_path, Store(None).remember)
    shown = prepared.photos["a.png"]
    assert [width for _, width in shown.sources] == [480, 960, 1000]
    assert (shown.width, shown.height) == (1000, 500)
    assert sorted(prepared.files) == sorted(name for name, _ in shown.sources)
    assert all(copy.read()[:4] == b"RIFF" for copy in prepared.files.values())


def test_a_picture_that_moves_is_told_to_the_author(tmp_path: Path) -> None:
    """By its path, once prepared and again from the cache; a picture that stands still needs no note."""
    frames = [Image.new("RGB", (40, 20), colour) for colour in ("red", "blue")]
    frames[0].save(tmp_path / "a.gif", save_all=True, append_images=frames[1:])
    frames[0].save(tmp_path / "b.png")
    told = ("a.gif: the GIF picture moves; the site shows its first frame; link to a film instead.",)
    with Store(tmp_path / "cache") as store:
        for _ in range(2):
            assert prepare_photos(("a.gif", "b.png"), tmp_path, store.remember).notes == told


def test_what_is_no_picture_is_named(tmp_path: Path) -> None:
    """With what to do about it."""
    (tmp_path / "photos").mkdir()
    (tmp_path / "photos/a.jpg").write_bytes(b"not a picture")
    with pytest.raises(PhotoError) as refused:
        prepare_photos(("photos/a.jpg",), tmp_path, Store(None).remember)
    assert str(refused.value).startswith("photos/a.jpg: ")
    assert refused.value.fix


def test_a_file_that_is_gone_is_named(tmp_path: Path) -> None:
    """It may go between reading and preparing."""
    with pytest.raises(PhotoError, match=r"^b\.png: the file cannot be read \(No such file or directory\)"):
        prepare_photos(("b.png",), tmp_path, Store(None).remember)
