"""Names of ingredients in other languages than English, one module a language; found by `reading`.

These tables stay with the rules, beside a language's package in chat: a name is read whatever language
is spoken (a bar in Madrid keeps its names when somebody speaks English there), also by an import or a
label, and a rule asks nothing of the chat. A language without such a module has its ingredients named
in English, or gives each its kind.
"""
