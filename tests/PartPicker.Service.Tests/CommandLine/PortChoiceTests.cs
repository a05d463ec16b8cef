using System.Net;
using System.Net.Sockets;
using PartPicker.Api.CommandLine;
using Xunit;

namespace PartPicker.Service.Tests.CommandLine;

public sealed class PortChoiceTests
{
    [Fact]
    public void A_busy_port_moves_on_and_says_so()
    {
        using var busy = new TcpListener(IPAddress.Loopback, 0);
        busy.Start();
        int wanted = ((IPEndPoint)busy.LocalEndpoint).Port;
        StringWriter notes = new();

        int? found = PortChoice.Find(IPAddress.Loopback, wanted, notes);

        Assert.InRange(found!.Value, wanted + 1, wanted + PortChoice.MaxTries - 1);
        Assert.Equal($"Port {wanted} is busy: using {found}.", notes.ToString().Trim());
    }

    [Fact]
    public void A_free_port_is_taken_without_a_word()
    {
        var probe = new TcpListener(IPAddress.Loopback, 0);
        probe.Start();
        int free = ((IPEndPoint)probe.LocalEndpoint).Port;
        probe.Dispose();
        StringWriter notes = new();

        Assert.Equal(free, PortChoice.Find(IPAddress.Loopback, free, notes));
        Assert.Empty(notes.ToString());
    }

    [Fact]
    public void The_end_of_the_ports_is_the_end_of_the_search()
    {
        using var busy = new TcpListener(IPAddress.Loopback, IPEndPoint.MaxPort);
        busy.Start();

        Assert.Null(PortChoice.Find(IPAddress.Loopback, IPEndPoint.MaxPort, TextWriter.Null));
    }
}
