import zipfile

import pytest

from generator.pipeline.order import Order

from .conftest import Run


@pytest.mark.parametrize("name", ["hearth", "hearth.v2"])
def test_a_zip_of_the_site_as_files(built_bakery: Order, run: Run, name: str) -> None:
    farm = built_bakery.farm / "farm/farm.yml"
    farm.write_text(farm.read_text() + f"  site_address: https://farm.example/day/{name}/\n")
    answer = run("disk", "--content", built_bakery.content, "--farm", built_bakery.farm, "--into", built_bakery.into)
    assert answer.status == 0
    archive = built_bakery.into / f"disk/{name}.zip"
    assert answer.out == f"Unpack it anywhere and open index.html in it: {archive}\n"
    with zipfile.ZipFile(archive) as packed:
        names = packed.namelist()
    assert f"{name}/index.html" in names
    assert not any(each.endswith(("worker.js", "main.js", "manifest.webmanifest")) for each in names)
