"""Small faults in C++ text: where one can stand, and what the text becomes.
Relies on clang-format's spaces round every operator of two sides."""
import re

TURNED = {
    " < ": [" <= ", " >= "], " > ": [" >= ", " <= "], " <= ": [" < ", " > "], " >= ": [" > ", " < "],
    " == ": [" != "], " != ": [" == "],
}
SWAPPED = {" && ": [" || "], " || ": [" && "]}
ARITHMETIC = {
    " + ": [" - "], " - ": [" + "], " * ": [" / "], " / ": [" * "], " % ": [" / "], " += ": [" -= "],
    " -= ": [" += "], " << ": [" >> "], " >> ": [" << "], " & ": [" | "], " | ": [" & "], " ^ ": [" | "],
}
WORDS = {
    "true": ["false"], "false": ["true"], "break;": ["continue;"], "continue;": ["break;"],
    "std::min": ["std::max"], "std::max": ["std::min"], "front()": ["back()"], "back()": ["front()"],
    "lower_bound": ["upper_bound"], "upper_bound": ["lower_bound"],
}
STEPS = {"++": ["--"], "--": ["++"]}
NUMBER = re.compile(r"(?<![\w.'])(0[xX][0-9a-fA-F]+|\d[\d']*)(U|L|UL|ULL|LL)?(?![\w.'])")
CONDITION = re.compile(r"\b(?:if|while) \(")
STATEMENT = re.compile(r"^[ ]+(?!return\b|break\b|continue\b|case\b|using\b|else\b|[\w:<>,&* ]+ \w+;)[^#\s].*;$")
RETURN = re.compile(r"\breturn (?!\{\};)([^;]+);")


def blanked(text):
    """`text` with comments, strings, characters and preprocessor lines as blanks of the same length."""
    pattern = re.compile(
        r'//[^\n]*|/\*.*?\*/|R"\((?:.|\n)*?\)"|"(?:\\.|[^"\\\n])*"|(?<![\w])\'(?:\\.|[^\'\\\n])+\'|^#[^\n]*',
        re.S | re.M)
    return pattern.sub(lambda found: re.sub(r"[^\n]", " ", found.group()), text)


def replacements(code, table, kind):
    for old, news in table.items():
        edge = re.escape(old)
        if old[0].isalpha():
            edge = r"(?<!\w)" + edge
        for found in re.finditer(edge, code):
            for new in news:
                yield kind, found.start(), found.end(), new


def closing(code, opening):
    depth = 0
    for at in range(opening, len(code)):
        depth += (code[at] == "(") - (code[at] == ")")
        if depth == 0:
            return at
    return None


def faults(text):
    """All faults as (kind, begin, end, replacement), in the order of their kinds and places."""
    code = blanked(text)
    yield from replacements(code, TURNED, "comparison")
    yield from replacements(code, SWAPPED, "and/or")
    yield from replacements(code, ARITHMETIC, "arithmetic")
    yield from replacements(code, WORDS, "word")
    yield from replacements(code, STEPS, "step")
    for found in NUMBER.finditer(code):
        value = int(found.group(1).replace("'", ""), 0)
        for other in {value + 1, value - 1} - {-1}:
            yield "constant", found.start(), found.end(), f"{other}{found.group(2) or ''}"
    for found in CONDITION.finditer(code):
        end = closing(code, found.end() - 1)
        inner = text[found.end():end]
        if end and ";" not in inner and " = " not in inner:
            yield "negated", found.end(), end, f"!({inner})"
    for found in RETURN.finditer(code):
        yield "return", found.start(), found.end(), "return {};"
    for line in re.finditer(r"^.*$", code, re.M):
        if not STATEMENT.match(line.group()) or line.group().count("(") != line.group().count(")"):
            continue
        begin = line.start() + len(line.group()) - len(line.group().lstrip())
        yield "dropped", begin, line.end(), ";"
        yield "early", begin, begin, "return {}; "
        yield "early", begin, begin, "return; "
