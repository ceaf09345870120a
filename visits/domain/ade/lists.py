"""What a document of the exchange is made of."""

from collections.abc import Sequence

Json = str | int | float | bool | None | Sequence["Json"] | dict[str, "Json"]
JsonObject = dict[str, Json]
JsonList = list[Json]
