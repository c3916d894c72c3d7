"""Names of units in full, for a hint where a spec spells one out instead of its symbol."""

import re

# Each as one of it; the plural and the American spelling are brought to these.
_SYMBOLS = {
    "millimetre": "mm",
    "centimetre": "cm",
    "metre": "m",
    "kilometre": "km",
    "micrometre": "um",
    "radian": "rad",
    "metre per second": "m/s",
    "kilometre per hour": "km/h",
    "mile per hour": "mph",
    "foot per minute": "ft/min",
    "revolution per minute": "rpm",
    "gram": "g",
    "kilogram": "kg",
    "kilogramme": "kg",
    "pound": "lb",
    "pound force": "lbf",
    "ounce": "oz",
    "newton": "N",
    "kilonewton": "kN",
    "newton metre": "Nm",
    "pound foot": "lbfft",
    "foot pound": "lbfft",
    "pound inch": "lbfin",
    "inch pound": "lbfin",
    "watt": "W",
    "kilowatt": "kW",
    "horsepower": "hp",
    "joule": "J",
    "kilojoule": "kJ",
    "pascal": "Pa",
    "kilopascal": "kPa",
    "megapascal": "MPa",
    "millibar": "mbar",
    "degree celsius": "degC",
    "celsius": "degC",
    "centigrade": "degC",
    "degree fahrenheit": "degF",
    "fahrenheit": "degF",
    "kelvin": "K",
    "second": "s",
    "minute": "min",
    "hertz": "Hz",
    "square millimetre": "mm2",
    "square centimetre": "cm2",
    "square metre": "m2",
    "millilitre": "mL",
    "cubic centimetre": "cm3",
    "litre per minute": "L/min",
    "centistoke": "cSt",
    "percent": "%",
    "per cent": "%",
    "rockwell": "HRC",
    "vicker": "HV",
    "brinell": "HB",
}
_WORD = re.compile(r"[a-z]+")


def symbol_of_words(text: str) -> str | None:
    """The symbol of a unit that is written as words, in its canonical spelling.

    >>> symbol_of_words("Newton-meters"), symbol_of_words("degrees celsius")
    ('Nm', 'degC')
    """
    words = [_singular(word) for word in _WORD.findall(text.lower())]
    return _SYMBOLS.get(" ".join(words))


def _singular(word: str) -> str:
    if word == "feet":
        return "foot"
    if word == "inches":
        return "inch"
    one = word if word == "celsius" else word.removesuffix("s")
    return re.sub(r"(met|lit)er$", r"\1re", one)
