namespace PartPicker.Storage;

/// <summary>The file cannot serve as a store; the message says why and what to do.</summary>
public sealed class StoreException : Exception
{
    public StoreException(string message) : base(message)
    {
    }

    public StoreException(string message, Exception cause) : base(message, cause)
    {
    }
}
