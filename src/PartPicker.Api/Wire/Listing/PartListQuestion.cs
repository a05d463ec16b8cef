using PartPicker.Parts;
using PartPicker.Selection;

namespace PartPicker.Api.Wire;

/// <summary>A list of parts as it is asked for.</summary>
/// <param name="Query">What the parts must be, in which order, and which page.</param>
/// <param name="Outlet">Whose prices and stock are shown; null: none are.</param>
/// <param name="Format">How the answer is written.</param>
internal sealed record PartListQuestion(PartQuery Query, Outlet? Outlet, AnswerFormat Format);
