using PartPicker.Api.Capacity;
using PartPicker.Api.CommandLine;
using Xunit;

namespace PartPicker.Service.Tests.CommandLine;

public sealed class ServiceOptionsTests
{
    [Fact]
    public void Nothing_asked_for_means_the_usual()
    {
        ServiceOptions options = Read();

        Assert.Equal(5180, options.Port);
        Assert.False(options.Once || options.Quiet || options.Help);
        Assert.Null(options.DataFolder);
        Assert.Null(options.CatalogFolder);
    }

    [Fact]
    public void Every_option_is_read_with_a_space_or_an_equals_sign()
    {
        ServiceOptions spaced = Read("--once", "--quiet", "--port", "6000", "--data", "/d", "--catalog", "/c");
        ServiceOptions joined = Read("--catalog=/c", "--data=/d", "--port=6000", "--quiet", "--once");

        foreach (ServiceOptions options in new[] { spaced, joined })
        {
            Assert.True(options.Once && options.Quiet);
            Assert.Equal((6000, "/d", "/c"), (options.Port, options.DataFolder, options.CatalogFolder));
        }
    }

    [Fact]
    public void A_relative_folder_is_meant_from_where_the_command_was_typed() =>
        Assert.Equal(Path.Combine(Directory.GetCurrentDirectory(), "mine"), Read("--data", "mine").DataFolder);

    [Fact]
    public void Settings_of_the_host_are_passed_on() =>
        Assert.Equal(["--environment=Development"], Read("--environment=Development", "--once").HostSettings);

    [Theory]
    [InlineData("fit")]
    [InlineData("fields")]
    public void A_page_of_reference_may_be_asked_for(string page) => Assert.Equal(page, Read("docs", page).Page);

    [Fact]
    public void Where_others_may_ask_keys_are_needed()
    {
        Assert.False(Read().KeysNeeded || Read("--listen", "127.0.0.2").KeysNeeded || Read("--listen=::1").KeysNeeded);
        Assert.True(Read("--listen", "0.0.0.0").KeysNeeded && Read("--listen=::").KeysNeeded && Read("--listen=192.168.1.2").KeysNeeded);
        Assert.True(Read("--behind-proxy").KeysNeeded);
    }

    [Fact]
    public void Limits_are_changed_by_name()
    {
        ServiceOptions options = Read("--limit", "searches=7", "--limit=searches-waiting=0", "--limit", "searches=8");

        Assert.Equal((8, 0, 1200), (options.Of(ServiceLimits.Searches), options.Of(ServiceLimits.SearchesWaiting), options.Of(ServiceLimits.RequestsPerKey)));
    }

    [Theory]
    [InlineData("--listen takes an IP address, as 0.0.0.0 for all of this machine, not 'all'.", "--listen", "all")]
    [InlineData("--listen needs a value.", "--listen")]
    [InlineData("'--behind-proxy=yes' is not an option.", "--behind-proxy=yes")]
    [InlineData("The limit searches takes a whole number from 1 to 1000000, not '0'.", "--limit", "searches=0")]
    [InlineData("The limit requests-per-key takes a whole number from 1 to 1000000, not ''.", "--limit", "requests-per-key")]
    [InlineData("--once asks without a key: it goes with no --listen beyond this machine, and with no --behind-proxy.", "--once", "--behind-proxy")]
    public void What_cannot_be_read_of_who_may_ask_is_told(string complaint, params string[] args) =>
        Assert.Equal((null, complaint), ServiceOptions.Read(args));

    [Fact]
    public void A_limit_that_is_none_is_told_with_those_that_are()
    {
        string? complaint = ServiceOptions.Read(["--limit", "patience=1"]).Complaint;

        Assert.StartsWith("--limit takes NAME=N, where NAME is one of: requests-per-key, ", complaint);
        Assert.EndsWith("; not 'patience=1'.", complaint);
    }

    [Theory]
    [InlineData("'docs' takes one of: fields, fit.", "docs")]
    [InlineData("'docs' takes one of: fields, fit.", "docs", "errors")]
    [InlineData("'docs' takes one of: fields, fit.", "docs", "fit", "--once")]
    [InlineData("'docs' is not an option.", "--once", "docs", "fit")]
    [InlineData("'--twice' is not an option.", "--twice")]
    [InlineData("'once' is not an option.", "once")]
    [InlineData("'--once=yes' is not an option.", "--once=yes")]
    [InlineData("'--Port' is not an option.", "--Port", "1")]
    [InlineData("'-' is not an option.", "-")]
    [InlineData("'' is not an option.", "")]
    [InlineData("--port needs a value.", "--once", "--port")]
    [InlineData("--data needs a value.", "--data=")]
    [InlineData("--port takes a whole number from 0 to 65535, not '65536'.", "--port", "65536")]
    [InlineData("--port takes a whole number from 0 to 65535, not '-1'.", "--port", "-1")]
    [InlineData("--port takes a whole number from 0 to 65535, not 'any'.", "--port=any")]
    public void What_cannot_be_read_is_told(string complaint, params string[] args) =>
        Assert.Equal((null, complaint), ServiceOptions.Read(args));

    private static ServiceOptions Read(params string[] args)
    {
        (ServiceOptions? options, string? complaint) = ServiceOptions.Read(args);
        Assert.Null(complaint);
        return options!;
    }
}
