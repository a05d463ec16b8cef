namespace PartPicker.Api.Wire;

/// <summary>A value of any JSON type, as the member that it is put into takes it.</summary>
internal sealed record AnyValueWire;
