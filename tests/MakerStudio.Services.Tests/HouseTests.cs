using System.Reflection;
using FluentValidation;
using MakerStudio.Services.Schema;
using Microsoft.EntityFrameworkCore;

namespace MakerStudio.Services.Tests;

/// <summary>The house rules that can be read off the assembly itself.</summary>
public class HouseTests
{
    private static readonly Assembly House = typeof(StudioStore).Assembly;

    /// <summary>Nobody is signed in, or the person at the machine itself acts: what takes no actor, by name.</summary>
    private static readonly string[] Unsigned =
    [
        "FirstRun.SetUpAsync", "Invitations.JoinAsync", "Invitations.SetNewPassphraseAsync", "Invitations.IssueNewPassphraseAsync",
        "SampleStudio.MakeAsync", "Passphrases.CheckAsync", "SignIn.WithPassphraseAsync", "SignIn.WithPasskeyAsync",
    ];

    /// <summary>Works something out and changes nothing.</summary>
    private static readonly string[] Questions = ["Versions.ScaleAsync", "Deliveries.WorkOutAsync", "Purchasing.WorkOutAsync"];

    /// <summary>
    /// Ids, and dates that only the row can judge: the command looks up what they name. Drafts are kept exactly as typed.
    /// </summary>
    private static readonly string[] NothingToCheck =
    [
        "ArchiveMaterial", "ChangeRole", "CloseBatch", "ClosePlace", "DiscardDelivery", "DiscardOrder", "DraftOrder", "EndPriceBreak", "IssueNewPassphraseByName", "KeepDelivery", "KeepFill", "KeepOrder", "MatchPendingReceipt",
        "OpenLot", "PostSalesFile", "PutAwayFormula", "PutAwayKit", "ReceiveOrder", "ReleaseLot", "RemovePaper", "RemovePasskey", "RemovePerson", "RestoreMaterial", "RetireLabelStock", "RetireChannel", "RetireScale", "RetireSize",
        "SignOutEverywhere", "StartDraft", "StartWeighing", "TakeBackOverride", "TakeOver", "ThrowAwayDraft", "WithdrawInvitation",
    ];

    private static IEnumerable<Type> Visible => House.GetTypes().Where(t => t.IsVisible);

    [Fact]
    public void PublicTypes_OfServices_ShowNoDatabaseType()
    {
        var shown = Visible.SelectMany(t => Shows(t).Select(s => (Where: $"{t.Name}", Type: s)))
            .Where(s => IsOfTheDatabase(s.Type)).Select(s => $"{s.Where} shows {s.Type}").Distinct().ToList();

        Assert.True(shown.Count == 0, string.Join('\n', shown));
        Assert.Contains(Visible, t => t == typeof(StudioStore)); // it was the right assembly that was looked at
    }

    [Fact]
    public void Entities_OfTheModel_AreAllHidden()
    {
        using var db = new StudioDb(StudioDbOptions.For("Host=nowhere"));
        var ours = db.Model.GetEntityTypes().Select(e => e.ClrType).Where(t => t.Assembly == House).Distinct().ToList();

        Assert.True(ours.Count > 20, $"{ours.Count} entities were looked at.");
        Assert.Empty(ours.Where(t => t.IsVisible).Select(t => t.Name));
        Assert.False(typeof(StudioDb).IsVisible);
    }

    [Fact]
    public void Internals_OfServices_AreShownToTestsAlone() => Assert.Equal(
        ["MakerStudio.Services.Tests", "MakerStudio.Web.Tests"],
        House.GetCustomAttributes<System.Runtime.CompilerServices.InternalsVisibleToAttribute>().Select(a => a.AssemblyName).Order());

    [Fact]
    public void Commands_AllButTheUnsigned_SayWhoActs()
    {
        var commands = Visible.Where(t => t.IsClass)
            .SelectMany(t => t.GetMethods(BindingFlags.Public | BindingFlags.Instance | BindingFlags.Static | BindingFlags.DeclaredOnly))
            .Where(IsCommand).ToList();
        var without = commands.Where(m => m.GetParameters().FirstOrDefault()?.ParameterType != typeof(Actor))
            .Select(m => $"{m.DeclaringType!.Name}.{m.Name}").Distinct().Order();

        Assert.True(commands.Count > 50, $"{commands.Count} commands were looked at.");
        Same(Unsigned.Concat(Questions), without);
    }

    [Fact]
    public void Requests_AllButTheBareOnes_AreCheckedForShape()
    {
        // A validator counts when a service holds it: one that nobody passes to the store checks nothing.
        var held = House.GetTypes().SelectMany(t => t.GetFields(BindingFlags.Static | BindingFlags.NonPublic | BindingFlags.Public))
            .Select(f => f.FieldType).Where(t => typeof(IValidator).IsAssignableFrom(t)).ToList();
        var requests = House.GetTypes().Where(t => t.IsSubclassOf(typeof(StudioRequest)) && !t.IsAbstract).ToList();
        var without = requests.Where(r => !held.Exists(v => typeof(IValidator<>).MakeGenericType(r).IsAssignableFrom(v))).Select(r => r.Name).Order();

        Assert.True(requests.Count > 50, $"{requests.Count} requests were looked at.");
        Same(NothingToCheck, without);
    }

    private static void Same(IEnumerable<string> listed, IEnumerable<string> found)
    {
        var (told, seen) = (listed.ToHashSet(), found.ToHashSet());
        Assert.True(told.SetEquals(seen), $"Not listed: {string.Join(", ", seen.Except(told))}. Listed for nothing: {string.Join(", ", told.Except(seen))}.");
    }

    private static bool IsCommand(MethodInfo method) =>
        method.Name.EndsWith("Async", StringComparison.Ordinal)
        && (method.GetParameters().Any(p => p.ParameterType.IsSubclassOf(typeof(StudioRequest)))
        || (method.ReturnType is { IsGenericType: true } task && task.GetGenericArguments()[0] is { IsGenericType: true } outcome
            && outcome.GetGenericTypeDefinition() == typeof(Outcome<>)));

    private static bool IsOfTheDatabase(Type type) =>
        type.Assembly.GetName().Name is { } name
        && (name.StartsWith("Microsoft.EntityFrameworkCore", StringComparison.Ordinal) || name.StartsWith("Npgsql", StringComparison.Ordinal)
            || name.EndsWith(".EntityFrameworkCore", StringComparison.Ordinal));

    /// <summary>Every type that stands in a type's public or inheritable face, with what is inside generic and array types.</summary>
    private static IEnumerable<Type> Shows(Type type)
    {
        const BindingFlags all = BindingFlags.Public | BindingFlags.NonPublic | BindingFlags.Instance | BindingFlags.Static | BindingFlags.DeclaredOnly;
        var methods = type.GetMethods(all).Cast<MethodBase>().Concat(type.GetConstructors(all)).Where(m => m.IsPublic || m.IsFamily || m.IsFamilyOrAssembly).ToList();
        return methods.SelectMany(m => m.GetParameters().Select(p => p.ParameterType))
            .Concat(methods.OfType<MethodInfo>().Select(m => m.ReturnType))
            .Concat(type.GetFields(all).Where(f => f.IsPublic || f.IsFamily || f.IsFamilyOrAssembly).Select(f => f.FieldType))
            .Concat(type.GetInterfaces()).Append(type.BaseType ?? typeof(object))
            .SelectMany(Inside);
    }

    private static IEnumerable<Type> Inside(Type type) =>
        (type.HasElementType ? Inside(type.GetElementType()!) : type.GetGenericArguments().SelectMany(Inside)).Append(type);
}
