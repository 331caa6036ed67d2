import zipfile

from generator.pipeline.order import Order

from .conftest import Run


def test_a_zip_of_the_site_as_files(bakery: Order, run: Run) -> None:
    answer = run("disk", "--content", bakery.content, "--farm", bakery.farm, "--into", bakery.into)
    assert answer.status == 0
    archive = next((bakery.into / "disk").glob("*.zip"))
    assert answer.out == f"Unpack it anywhere and open index.html in it: {archive}\n"
    with zipfile.ZipFile(archive) as packed:
        names = packed.namelist()
    assert f"{archive.stem}/index.html" in names
    assert not any(name.endswith(("worker.js", "main.js", "manifest.webmanifest")) for name in names)
