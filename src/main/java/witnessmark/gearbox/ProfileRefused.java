package witnessmark.gearbox;

import java.util.List;
import java.util.stream.Collectors;
import witnessmark.refusal.Refusal;

/** A truck profile that cannot be used; carries every fault of it, its message has one line for each. */
public final class ProfileRefused extends Refusal {

    private final transient List<ProfileFault> faults;

    public ProfileRefused(List<ProfileFault> faults) {
        super(faults.stream().map(ProfileFault::text).collect(Collectors.joining("\n")));
        this.faults = List.copyOf(faults);
    }

    public List<ProfileFault> faults() {
        return faults;
    }
}
