package settlemark.ui;
import java.util.*;
public final class WalkMain {
  public static void main(String[] a) throws Exception {
    Words.speak(Language.ofCode(a[0]).get());
    int w=Integer.parseInt(a[1]),h=Integer.parseInt(a[2]); double scale=Double.parseDouble(a[3]);
    WalkedScenes.all(w,h,scale,(name,findings)->{ for(String f:findings) System.out.println(name+": "+f);});
    System.exit(0);
  }
}
