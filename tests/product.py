"""The demonstration farm's content, read once in each test process. Do not change what these give."""

from functools import cache

from generator.computing import Workbook
from generator.model.library import Library
from generator.pipeline.figuring import figure
from generator.pipeline.order import HERE
from generator.reading import Reading, read_library
from generator.telling.edition import Edition


@cache
def product_reading() -> Reading:
    return read_library(HERE / "content/shared", HERE / "content/farms/demo")


def product_library() -> Library:
    return product_reading().library


@cache
def product_workbook() -> Workbook:
    return Workbook.of(product_reading())


@cache
def product_edition() -> Edition:
    return figure(product_reading(), product_workbook())
