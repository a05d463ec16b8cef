namespace PartPicker.Api.Wire;

/// <summary>The member is true or left out: false would say nothing.</summary>
[AttributeUsage(AttributeTargets.Property)]
internal sealed class OnlyTrueAttribute : Attribute;
