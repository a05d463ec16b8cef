namespace PartPicker.Api.Wire;

/// <summary>What the caller calls a line of a bulk run: text or a number, repeated in every answer to it.</summary>
internal sealed record BulkIdWire;
