// Each class has an app and a database of its own; more than two at once would only wait for each other.
[assembly: CollectionBehavior(MaxParallelThreads = 2)]
