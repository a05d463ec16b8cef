namespace PartPicker.Api.Wire;

/// <summary>
/// Marks a part of a request. What is null is left out when it is written: a request never states null. In
/// answers, on the other hand, every member always stands.
/// </summary>
internal interface IRequestWire;
