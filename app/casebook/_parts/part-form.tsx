type Props = { readonly second: number; readonly from: number };

/** Parts a number from the patient as which it is read. */
export function PartForm({ second, from }: Props) {
  return (
    <form action="/casebook/part" method="post">
      <input type="hidden" name="person" value={second} />
      <input type="hidden" name="case" value={from} />
      <button type="submit">
        Part case {second} from case {from}
      </button>
    </form>
  );
}
