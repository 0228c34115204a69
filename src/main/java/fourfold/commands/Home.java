package fourfold.commands;

import fourfold.export.PlainText;
import fourfold.facts.Child;
import fourfold.screens.Moments;
import fourfold.store.Place;
import fourfold.store.Store;
import java.nio.file.Path;
import java.text.Normalizer;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;

/** A home that is open: its store, its records and its clock. */
final class Home implements AutoCloseable {
    private final Store store;
    private final Household records;
    private final Moments moments;
    private final Optional<Demo> demo;

    private Home(Store store, Moments moments, Household records, Optional<Demo> demo) {
        this.store = store;
        this.moments = moments;
        this.records = records;
        this.demo = demo;
    }

    /** Opens the demo, the named file, or the usual one. */
    static Home open(World world, Optional<Path> file, boolean demo) {
        Home home = opened(world, file, demo);
        home.records.speak(world.words());
        return home;
    }

    private static Home opened(World world, Optional<Path> file, boolean demo) {
        Moments moments = world.clock().get();
        if (demo) {
            Demo copy = Demo.make(moments);
            return new Home(copy.store(), moments, new Household(copy.store(), moments), Optional.of(copy));
        }
        Path place = place(world, file);
        Store store = Store.open(place);
        return new Home(store, moments, new Household(store, moments, place), Optional.empty());
    }

    /** The named file, or the usual one. */
    static Path place(World world, Optional<Path> file) {
        return file.orElseGet(() -> Place.usual(world.systemName(), world.environment(), world.home()));
    }

    Household records() {
        return records;
    }

    Store store() {
        return store;
    }

    Moments moments() {
        return moments;
    }

    /** The named child, or the only one. */
    Child child(Optional<String> name, CommandSpec spec) {
        List<Child> children = store.children();
        List<Child> fitting = name.isEmpty()
                ? children
                : children.stream()
                        .filter(c -> written(c.name()).equalsIgnoreCase(written(name.get())))
                        .toList();
        if (fitting.size() == 1) {
            return fitting.get(0);
        }
        String names = children.stream().map(c -> "\"" + c.name() + "\"").collect(Collectors.joining(", "));
        String known = children.isEmpty()
                ? "No child is here yet. Add one with: fourfold children --add NAME"
                : "Name one with --child: " + names;
        throw new ParameterException(
                spec.commandLine(),
                name.map(n -> "There is no child \"" + n + "\". ").orElse("") + known);
    }

    /** A name however its accents were typed (Unicode normalization form C). */
    private static String written(String name) {
        return Normalizer.normalize(name.strip(), Normalizer.Form.NFC);
    }

    /** Tells what could not be kept, now that nothing is drawn any more; gives the exit code. */
    int told(World world) {
        records.toTell().forEach(line -> world.err().println("fourfold: " + PlainText.safe(line)));
        return records.toTell().isEmpty() ? ExitCode.DONE : ExitCode.WORLD;
    }

    @Override
    public void close() {
        records.leaveSeat();
        store.close();
        demo.ifPresent(Demo::close);
    }
}
