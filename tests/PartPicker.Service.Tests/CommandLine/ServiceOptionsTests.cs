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
