"""What each answer says, words first: templates that the page fills with formatted numbers.

One module a topic, one function a calculator: it takes the inputs (by name) and the answer (the
function's NamedTuple) and returns three sentences: verdict, number, reason. `{name}` stands for a
result with its unit, `{in:name}` for an input, `{a..b}` for a range of two results.
"""
