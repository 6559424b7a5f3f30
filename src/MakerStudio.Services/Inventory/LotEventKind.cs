namespace MakerStudio.Services.Inventory;

public enum LotEventKind { Received, StatusChanged, Opened, Retested, PaperAdded, Moved, Counted, Tared }
