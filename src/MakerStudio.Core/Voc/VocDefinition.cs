namespace MakerStudio.Core.Voc;

/// <summary>Whose definition of what counts.</summary>
public enum VocDefinition
{
    /// <summary>40 CFR 59.202 and 59.203, 40 CFR 51.100(s).</summary>
    UsFederal,

    /// <summary>17 CCR 94508 and 94510.</summary>
    California,

    /// <summary>States that follow the OTC model rule: what counts is as in California, the fragrance exemption is 2 % without an end.</summary>
    OtherStates,
}

public static class VocDefinitions
{
    public static string Name(VocDefinition definition) => definition switch
    {
        VocDefinition.UsFederal => "US federal",
        VocDefinition.California => "California",
        _ => "states after the OTC model rule",
    };
}

/// <summary>The form of product a limit is for, to suggest limits for a kind of product.</summary>
public enum VocForm
{
    Aerosol,
    Liquid,
    Solid,

    /// <summary>Not an aerosol, with claims about odours on fabric that is not laundered.</summary>
    FabricSpray,

    /// <summary>Not an aerosol, with claims to remove odours.</summary>
    OdorRemover,
}
