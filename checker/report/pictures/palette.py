"""Colours of report and pictures, by meaning, in light and in dark.

A picture writes ``var(--ink)`` and never a colour; the page defines the variables from here. The
hues are those of Okabe and Ito (2008), which people with any of the common colour deficiencies
tell apart, darkened or lightened for a contrast of 4.5 to 1 (WCAG 2.2, 1.4.3) against the ground
where they carry text. Nothing is told by colour alone.
"""

LIGHT = {
    "ground": "#ffffff",
    "panel": "#f4f5f3",
    "ink": "#1b1f23",
    "faint": "#59626b",
    "rule": "#c6ccd1",
    "warning": "#a33f00",
    "caution": "#7d5800",
    "advisory": "#005a8f",
    "meets": "#00684b",
    "unknown": "#5d5d5d",
    "broken": "#8a2b66",
    "steel": "#dfe4e8",
    "oil": "#f0d9a0",
    "series-1": "#005a8f",
    "series-2": "#a33f00",
    "series-3": "#00684b",
    "series-4": "#8a2b66",
    "series-5": "#7d5800",
    "series-6": "#23709c",
}

DARK = {
    "ground": "#14171a",
    "panel": "#1e2327",
    "ink": "#eceff1",
    "faint": "#a5b0b9",
    "rule": "#434c54",
    "warning": "#ff9a5c",
    "caution": "#f2c14e",
    "advisory": "#7cc4f0",
    "meets": "#4fd0a5",
    "unknown": "#b4b4b4",
    "broken": "#e59ccb",
    "steel": "#39424a",
    "oil": "#5c4a1c",
    "series-1": "#7cc4f0",
    "series-2": "#ff9a5c",
    "series-3": "#4fd0a5",
    "series-4": "#e59ccb",
    "series-5": "#f2c14e",
    "series-6": "#b8dff7",
}
