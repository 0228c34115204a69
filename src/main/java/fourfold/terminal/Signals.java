// SPDX-License-Identifier: Apache-2.0
package fourfold.terminal;

import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Proxy;
import org.jspecify.annotations.Nullable;

/**
 * What happens on a signal of the system. Reached by reflection, as {@code sun.misc.Signal} is not for direct use; where
 * it is missing nothing is changed, and the program merely notices a resize or a resume later.
 */
final class Signals {
    private static final String SIGNAL = "sun.misc.Signal";
    private static final String HANDLER = "sun.misc.SignalHandler";

    private Signals() {}

    /** Loads what {@link #on} needs. */
    static void load() {
        try {
            proxy(Class.forName(HANDLER), () -> {});
        } catch (ReflectiveOperationException | RuntimeException e) {
            // As below.
        }
    }

    /** Runs {@code action} on each signal called {@code name}, such as {@code WINCH}; on a thread of the system's. */
    static void on(String name, Runnable action) {
        try {
            Class<?> handler = Class.forName(HANDLER);
            handle(name, handler, proxy(handler, action));
        } catch (ReflectiveOperationException | RuntimeException e) {
            // No such signal here, or the virtual machine keeps it for itself: nothing to add.
        }
    }

    private static Object proxy(Class<?> handler, Runnable action) {
        return Proxy.newProxyInstance(
                Signals.class.getClassLoader(), new Class<?>[] {handler}, (proxy, method, arguments) -> {
                    if (method.getName().equals("handle")) {
                        action.run();
                    }
                    return null;
                });
    }

    /** Makes the process deaf to the signal called {@code name}. */
    static void ignore(String name) {
        try {
            Class<?> handler = Class.forName(HANDLER);
            Object deaf = handler.getField("SIG_IGN").get(null);
            handle(name, handler, deaf);
        } catch (ReflectiveOperationException | RuntimeException e) {
            // As above.
        }
    }

    private static void handle(String name, Class<?> handler, @Nullable Object action)
            throws ReflectiveOperationException {
        Class<?> signal = Class.forName(SIGNAL);
        try {
            Object named = signal.getConstructor(String.class).newInstance(name);
            signal.getMethod("handle", signal, handler).invoke(null, named, action);
        } catch (InvocationTargetException e) {
            throw new ReflectiveOperationException(e);
        }
    }
}
