using System.Net;
using System.Net.Sockets;

namespace PartPicker.Api.CommandLine;

/// <summary>Finds a port of an address that nobody listens on.</summary>
internal static class PortChoice
{
    /// <summary>How many ports are tried, the first included.</summary>
    public const int MaxTries = 20;

    /// <summary>The first free port from the wanted one on; null when all that were tried are busy.</summary>
    /// <param name="address">The address.</param>
    /// <param name="wanted">0 leaves the choice to the system.</param>
    /// <param name="notes">Where a move is told.</param>
    public static int? Find(IPAddress address, int wanted, TextWriter notes)
    {
        if (wanted == 0)
            return 0;
        for (int port = wanted; port < wanted + MaxTries && port <= IPEndPoint.MaxPort; port++)
        {
            if (IsFree(address, port))
            {
                if (port != wanted)
                    notes.WriteLine($"Port {wanted} is busy: using {port}.");
                return port;
            }
        }

        return null;
    }

    private static bool IsFree(IPAddress address, int port)
    {
        using var probe = new TcpListener(address, port);
        try
        {
            probe.Start();
            return true;
        }
        catch (SocketException)
        {
            return false;
        }
    }
}
