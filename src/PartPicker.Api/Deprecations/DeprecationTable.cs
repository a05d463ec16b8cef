using System.Text.Json;

namespace PartPicker.Api.Deprecations;

/// <summary>Everything that is deprecated. The headers of answers and the API document are made from it.</summary>
internal sealed class DeprecationTable
{
    /// <summary>Least time from the word that something goes until it does.</summary>
    public static readonly TimeSpan LeastNotice = TimeSpan.FromDays(365);

    private readonly IReadOnlyList<Deprecation> rows;

    /// <exception cref="ArgumentException">A row gives too little notice, or names a member that its record does not have.</exception>
    public DeprecationTable(params IReadOnlyList<Deprecation> rows)
    {
        this.rows = rows;
        foreach (Deprecation row in rows)
        {
            if (row.Sunset - row.Since < LeastNotice)
                throw new ArgumentException($"{row.Name} goes too soon: the least notice is {LeastNotice.TotalDays} days.", nameof(rows));
            if ((row.Record is null) == (row.Operation is null))
                throw new ArgumentException($"{row.Name} needs a record or an operation, and not both.", nameof(rows));
            if (row.Record is { } record && !record.GetProperties().Any(p => JsonNamingPolicy.CamelCase.ConvertName(p.Name) == row.Name))
                throw new ArgumentException($"{record.Name} has no member {row.Name}.", nameof(rows));
        }
    }

    /// <summary>What is deprecated today: nothing.</summary>
    public static DeprecationTable Standard { get; } = new();

    public bool IsEmpty => rows.Count == 0;

    /// <summary>The row of a member; a record also has the members of the record that it is made from.</summary>
    public Deprecation? Member(Type record, string name) =>
        rows.FirstOrDefault(row => row.Name == name && (row.Record?.IsAssignableFrom(record) ?? false));

    public Deprecation? Parameter(string? operation, string name) =>
        rows.FirstOrDefault(row => row.Name == name && row.Operation is not null && row.Operation == operation);
}
